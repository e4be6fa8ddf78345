import fc from 'fast-check';
import { expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import story from '../../../assets/demo/story.json' with { type: 'json' };
import type { JobId, PartId } from '../../../core/ids.ts';
import type { Entry } from '../../../core/journal/entry.ts';
import { anyDeeds, tryIt } from '../../../tests/builders/anyCommands.ts';
import { aDesk, type Desk } from '../../../tests/builders/desk.ts';
import { taggedMachine, takingIn } from '../../../tests/builders/takingIn.ts';

const LIMIT = 6000;
const FEE = 3000;
const A_MINUTE = 75;

/** A machine taken in, signed for, its board known, a board of ours on the wall. */
async function takenIn(desk: Desk, inside: boolean, smallPartsUpToMinor: number) {
  const settings = { ...shopOf.settings, tax: { permille: 200, inside } };
  await desk.ask('openShop', { settings, staff: shopOf.staff }, 'mina');
  const done = await desk.ask('takeIn', takingIn({ machine: taggedMachine, limitMinor: LIMIT, smallPartsUpToMinor }));
  const job = done.firstStream.slice('job:'.length) as JobId;
  const dimm = { kind: 'dimm', attributes: { memory: 'DDR4', module: 'UDIMM', capacity: 8 } };
  await desk.ask('writeCensus', {
    job,
    slots: [{ id: 'A2', takes: 'dimm', order: 1, source: 'by-hand' }],
    parts: [{ ...dimm, slot: 'A2', name: 'their module', serial: null, source: 'by-hand' }],
    gaps: [],
  });
  const made = await desk.ask('knowPart', {
    ...dimm,
    tag: null,
    name: 'our module',
    standing: { is: 'trial-grade', scopes: ['starts'] },
    place: { at: 'bin', bin: 'A1' },
    valueMinor: 3000,
  });
  const answers = { open: 'yes', 'own-parts-in': 'yes', photos: 'yes', fee: 'yes' };
  await desk.ask('signSheet', { job, answers, signed: { name: story.owner.name, drawn: null, contentHash: null } });
  const theirs = (await desk.view(job)).machine?.inside.A2;
  if (!theirs) throw new Error('no module inside');
  return { job, parts: { ours: made.firstStream.slice('part:'.length) as PartId, theirs } };
}

type Body = Readonly<Record<string, never>> & { readonly [field: string]: unknown };
const bodies = (entries: readonly Entry[], kind: string) =>
  entries.filter((entry) => entry.kind === kind).map((entry) => entry.body as Body);

/** What the owner would be asked to pay, worked out from the journal's lines alone: mended, and as it came. */
function owed(entries: readonly Entry[], inside: boolean): { readonly mended: number; readonly asItCame: number } {
  const struck = new Set(bodies(entries, 'work-struck').map((one) => one.run));
  const withdrawn = new Set(bodies(entries, 'word-withdrawn').map((one) => one.question));
  const fitted = new Set(bodies(entries, 'line-fitted').map((one) => one.part));
  const minutes = bodies(entries, 'work-finished')
    .filter((one) => one.kind !== 'own-proof' && !struck.has(one.run as never))
    .reduce((sum, one) => sum + Number(one.handsOn) - Number(one.ours ?? 0), 0);
  const withTax = (net: number) => net + (inside ? 0 : Math.sign(net) * Math.round(Math.abs(net) * 0.2));
  const lines = (asItCame: boolean) => {
    const sold = bodies(entries, 'line-agreed')
      .filter((one) => !withdrawn.has(one.question as never))
      .filter((one) => !asItCame || one.part === null || fitted.has(one.part as never))
      .flatMap((one) => {
        const price = Number(one.priceMinor);
        const core = one.core as { readonly minor: number } | undefined;
        return core ? [price, -Math.min(core.minor, price)] : [price];
      });
    const small = bodies(entries, 'charge-booked').map((one) => Number(one.priceMinor ?? -Number(one.minor)));
    return [asItCame ? FEE : Math.round(minutes * A_MINUTE), ...sold, ...small];
  };
  const sum = (asItCame: boolean) =>
    lines(asItCame)
      .map(withTax)
      .reduce((total, one) => total + one, 0);
  return { mended: sum(false), asItCame: sum(true) };
}

/** The consents that hold, told from what was carried out. */
function heed(agreed: Set<string>, name: string, input: Record<string, unknown>) {
  if (name === 'withdrawConsent') agreed.delete(String(input.id));
  if (name === 'answerConsent') agreed[input.answer === 'yes' ? 'add' : 'delete'](String(input.id));
}

const NEEDS = { 'look-mains': ['open'], 'dimm-loan': ['open', 'own-parts-in'] } as const;

it('whatever is tried in whatever order, the owner’s word holds: limit, hands in the machine, parts, pictures', {
  timeout: 300_000,
}, async () => {
  let [done, refused] = [0, new Map<string, number>()];
  await fc.assert(
    fc.asyncProperty(anyDeeds, fc.boolean(), fc.constantFrom(0, 1000), async (deeds, inside, small) => {
      const desk = await aDesk();
      try {
        const { job, parts } = await takenIn(desk, inside, small);
        const agreed = new Set(['open', 'own-parts-in', 'photos']);
        let limit = LIMIT;
        for (const deed of deeds) {
          const before = (await desk.view(job)).job;
          const tried = await tryIt(desk, job, deed, parts);
          if (!tried.done.ok) {
            refused.set(tried.done.refusal.refused, (refused.get(tried.done.refusal.refused) ?? 0) + 1);
            continue;
          }
          done += 1;
          const { name, input } = tried;
          if (name === 'startWork') expect(agreed).toContain('open');
          if (name === 'startWork' && input.kind === 'step')
            for (const need of NEEDS[input.what as keyof typeof NEEDS]) expect(agreed).toContain(need);
          if (name === 'addPhotographs') expect(agreed).toContain('photos');
          if (name === 'unplug') expect(agreed).toContain('open');
          if (name === 'answer' || name === 'answerConsent') expect(input.name).toBe(story.owner.name);
          heed(agreed, name, input);
          const entries = await (await desk.shop.read()).entries(`job:${job}`);
          const { mended, asItCame } = owed(entries, inside);
          if (name === 'answer') {
            const question = before?.questions.find((one) => one.id === input.question);
            for (const option of question?.options ?? [])
              if ((input.options as string[]).includes(option.id)) limit = option.agrees.limitMinor ?? limit;
          }
          // What was done on a word stays owed when it is taken back; nothing beyond it.
          if (name === 'withdrawWord') limit = Math.max((await desk.view(job)).job?.limitMinor ?? 0, 0);
          if (name === 'withdrawWord') expect(limit).toBeLessThanOrEqual(Math.max(before?.limitMinor ?? 0, LIMIT));
          expect(mended).toBeLessThanOrEqual(limit);
          expect(asItCame).toBeLessThanOrEqual(limit);
          if (name === 'fitPart') {
            const sold = bodies(entries, 'line-agreed').some((one) => one.part === parts.ours);
            expect(sold || agreed.has('own-parts-in')).toBe(true);
          }
        }
      } finally {
        await desk.close();
      }
    }),
    { numRuns: Number(process.env.KNOWNGOOD_LONG ? 200 : 15) },
  );
  // The runs must have met the rule they are about, else they show nothing.
  expect(done).toBeGreaterThan(50);
  expect(refused.get('limit-would-be-passed') ?? 0).toBeGreaterThan(0);
  expect(refused.get('consent-missing') ?? 0).toBeGreaterThan(0);
});
