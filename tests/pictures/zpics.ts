import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
const R = '/work/wt-cost/';
const { runDemo } = await import(R + 'electron/cli/demo/runDemo.ts');
const { openInBrowser } = await import(R + 'tests/journeys/runtime/openApp.ts');
const { fileWallet, openShop } = await import(R + 'db/index.ts');
const { openEngine } = await import(R + 'electron/service/openEngine.ts');
const { openTools } = await import(R + 'electron/service/openTools.ts');
const { carryOut } = await import(R + 'electron/service/desk/does.ts');
const { zAsked } = await import(R + 'core/contract/contract.ts');
const { takingIn } = await import(R + 'tests/builders/takingIn.ts');
const { followWithEstimate } = await import(R + 'electron/service/desk/estimates.ts');
const { benchState } = await import(R + 'electron/service/desk/tracingSheet.ts');
const { jobSheet } = await import(R + 'electron/service/desk/jobSheet.ts');
const out = '/tmp/pics'; mkdirSync(out, { recursive: true });
const config = mkdtempSync(join(tmpdir(), 'kg-pics-'));
const folder = join(config, 'knowngood');
const { ended } = await runDemo({ out: null, machine: null, print: () => undefined, folder, until: 'tracing' });
let now = Date.now() - 3 * 3600_000;
const shop = await openShop({ folder: join(folder, 'shop'), branch: 'main', clock: () => now, wallet: fileWallet(join(folder, 'wallet.key')), log: () => undefined });
const engine = openEngine();
const tools = openTools(engine, () => shop.lastSealedHead()?.short ?? null);
let n = 0;
const ask = async (name: string, input: unknown) => {
  now += 60_000;
  const asked = zAsked.parse({ command: `p${++n}`, by: 'bram', name, input });
  const done = await carryOut(shop, tools, 'x', asked);
  if (!done.ok) throw new Error(name + JSON.stringify(done.refusal));
  await followWithEstimate({ shop, tools, engine }, asked, done);
  return done;
};
const yes = Object.fromEntries(['open', 'own-parts-in', 'start-own', 'read', 'write', 'copy', 'fee', 'limit'].map((id) => [id, 'yes']));
const signed = { name: 'Judith Amberley', drawn: null };
const sheet = async (job: string) => jobSheet(await shop.read(), job, now);
async function until(job: string, most: number) {
  for (let i = 0; i < most; i++) try {
    const state = await benchState(await shop.read(), job, now);
    const t = await engine.tracing(state.view.shop, state.state, 'ratio');
    const next = t.offer.next;
    if (!next) return;
    const bad = next.outcomes.filter((o: any) => !o.ends).toSorted((a: any, b: any) => b.p - a.p)[0] ?? next.outcomes[0];
    console.log(next.step, bad.outcome);
    const use = { loaner: null, slots: [], parts: [] };
    await ask('startWork', { job, kind: 'step', what: next.step, startedAt: now, tray: 'tray 2', use, ownWord: 'for the picture' });
    const run = (await sheet(job)).job.work.at(-1).run;
    await ask('finishWork', { job, run, endedAt: now, outcome: bad.outcome, handsOn: 3, said: true, waiting: 0, readings: [], passed: null, note: null, endsWith: null, use, tray: 'tray 2' });
  } catch (e) { console.log(String(e)); return; }
}
async function aJob(symptom: string, steps: readonly string[], says: object) {
  const { made } = await ask('takeIn', takingIn({ owner: { fresh: (takingIn() as any).owner.fresh }, told: { ...(takingIn() as any).told, symptoms: [symptom], changed: [], often: ['every-time'], onlyWhen: [] }, ...says }));
  const job = made.slice('job:'.length);
  await ask('signSheet', { job, answers: yes, signed, contentHash: createHash('sha256').update(job).digest('hex') });
  await ask('signAlone', { job, id: 'risk', answer: 'yes', about: 'socket', signed, contentHash: '' }).catch((e) => console.log(String(e)));
  await ask('addBeforeFirstScrew', { job, encryption: 'no', keyInHand: false, keyPlace: null, backup: 'yes', bought: null, from: null, makersWarranty: 'over', seals: 'none' });
  for (const [at, line] of steps.entries()) {
    let [what, outcome] = line.split(':');
    if (what === 'ANSWER') {
      const agrees = { limitMinor: null, items: [], accepts: false, data: null, dead: null, goesTo: 'tracing' };
      await ask('ask', { job, kind: 'go-on', says: 'Go on?', options: [{ id: 'a', says: 'Yes', agrees }, { id: 'b', says: 'No', agrees: { ...agrees, goesTo: 'back' } }], validUntil: null, offer: null, stops: false });
      const q = (await sheet(job)).job.questions.at(-1).id;
      await ask('answer', { job, question: q, options: ['a'], name: signed.name, how: { by: 'phone', at: now, number: '01632 960 007', readBack: 'Yes' } });
      continue;
    }
    if (what === 'RESERVE') {
      const { shopParts } = await import(R + 'electron/service/desk/shopParts.ts');
      for (const part of await shopParts(await shop.read(), now)) if (part.kind === 'board') await ask('reservePart', { job: ended.job.id, part: part.id }).catch((e: unknown) => console.log(String(e)));
      continue;
    }
    if (what === 'SEEN') { await ask('recordSeen', { job, symptoms: [symptom] }); await ask('goOn', { job, to: 'tracing' }).catch((e) => console.log(String(e))); continue; }
    const use = { loaner: null, slots: [], parts: [] };
    await ask('startWork', { job, kind: 'step', what, startedAt: now, tray: 'tray 2', use, ownWord: 'for the picture' });
    const run = (await sheet(job)).job.work.at(-1).run;
    await ask('finishWork', { job, run, endedAt: now, outcome, handsOn: 3, said: true, waiting: 0, readings: [], passed: null, note: null, endsWith: null, use, tray: 'tray 2' });
  }
  if (steps === DARK || steps.includes('ANSWER')) await until(job, 40);
  const s = await sheet(job);
  console.log(symptom, s.job.stage, s.job.limitMinor);
  const state = await benchState(await shop.read(), job, now);
  const t = await engine.tracing(state.view.shop, state.state, 'rollout');
  console.log(t.offer.next?.step, JSON.stringify(t.offer.stop)?.slice(0, 300), t.offer.proposals.map((p: any) => p.step));
  return job;
}
const DARK = ['RESERVE', 'look-inside:clean', 'SEEN', 'watch-start:np', 'strip-outside:same', 'meas-rails:within', 'dimm-loan:same', 'cmos-clear:same', 'card-none:same', 'drives-off:same', 'meas-coils:fine', 'cpu-look:fine'];
const big = { limitMinor: 60_000 };
const jobs: Record<string, string> = {};
const only = process.argv[2];
const make = async (name: string, fn: () => Promise<string>) => { if (!only || only.includes(name)) try { jobs[name] = await fn(); } catch (e) { console.log(name, String(e)); } };
await make('worth', () => aJob('no-lock-light', ['look-inside:clean', 'SEEN'], { ...big, worthMinor: 3500 }));
await make('limit', () => aJob('no-lock-light', ['look-inside:clean', 'SEEN', 'ANSWER'], { limitMinor: 3000 }));
await make('sweep', () => aJob('no-lock-light', ['look-inside:clean', 'SEEN', 'sweep:works'], big));
await make('order', () => aJob('no-lock-light', DARK, big));
await engine.end(); await shop.close();
const app = await openInBrowser({ data: join(folder, 'shop'), config });
const { page } = app;
await page.getByRole('button', { name: 'Bram Ostler' }).click();
await page.getByRole('link', { name: 'Counter' }).waitFor();
const shot = async (name: string, path: string) => {
  await page.evaluate((hash: string) => { location.hash = hash; }, path);
  await page.waitForTimeout(2500); await page.getByText('Waiting for the records').first().waitFor({ state: 'detached', timeout: 90_000 }).catch(() => undefined); await page.waitForTimeout(2500);
  for (const size of [{ width: 1280, height: 800 }, { width: 1920, height: 1080 }])
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.setViewportSize(size); await page.emulateMedia({ colorScheme });
      await page.waitForTimeout(500);
      await page.screenshot({ path: join(out, `${name}-${colorScheme}-${size.width}.png`) });
    }
};
for (const [name, job] of Object.entries(jobs)) await shot(`bench-${name}`, `#/bench/${job}`);
if (jobs.worth) await shot('ask-worth', `#/counter/${jobs.worth}?ask=not-worth`);
if (jobs.limit) await shot('ask-limit', `#/counter/${jobs.limit}?ask=go-on`);
if (jobs.order) await shot('ask-order', `#/counter/${jobs.order}?ask=days-away&step=board-order`);
if (jobs.worth) await shot('counter-worth', `#/counter/${jobs.worth}`);
await shot('taking-in', '#/counter');
console.log(app.complaints);
await app.close();
rmSync(config, { recursive: true, force: true });
