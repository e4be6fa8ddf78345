import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { JobSheet } from '../../../core/contract/screens.ts';
import { readText } from '../../../core/readings/readText.ts';
import { fileWallet, isOpenRefusal, type OpenShop, openShop } from '../../../db/index.ts';
import { drawIssued, issuedPaper } from '../../service/desk/sheets/papers.ts';
import { openEngine } from '../../service/openEngine.ts';
import { openTools } from '../../service/openTools.ts';
import { storyClock } from './clock.ts';
import { machineStory } from './machineStory.ts';
import { originalStory } from './originalStory.ts';
import { seededChance } from './seededChance.ts';
import { STORY } from './story.ts';
import { openTeller, type Teller } from './teller.ts';
import { type Chapter, tellStory } from './tellStory.ts';

/** The shop's folder, and the file of its wallet, which lies outside it. */
export type KeptPlace = { readonly data: string; readonly wallet: string };

export type DemoAsked = {
  /** Where the papers go; null draws none. */
  readonly out: string | null;
  /** dmidecode text of the machine to do the job on; null tells the story as it stands. */
  readonly machine: string | null;
  readonly print: (line: string) => void;
  /** Keep the shop in `shop` in this folder, its wallet beside it, instead of in one that is removed afterwards. */
  readonly folder?: string;
  /** Keep the shop and its wallet just there. */
  readonly kept?: KeptPlace;
  /** Where the telling stops; it goes home unless told otherwise. */
  readonly until?: Chapter;
};

/** Does the whole job in a shop of its own and draws its papers. */
export async function runDemo({
  out,
  machine,
  print,
  folder: given,
  kept,
  until = 'home',
}: DemoAsked): Promise<{ readonly papers: readonly string[]; readonly ended: JobSheet | null }> {
  const passing = given === undefined && kept === undefined ? mkdtempSync(join(tmpdir(), 'knowngood-demo-')) : null;
  const place = kept ?? placeIn(given ?? passing ?? '');
  const clock = storyClock(STORY.story.takenIn.begun, STORY.story.zone);
  const shop = await openShop({
    folder: place.data,
    branch: 'main',
    clock: clock.now,
    wallet: fileWallet(place.wallet),
    log: () => undefined,
  });
  if (isOpenRefusal(shop)) throw new Error(`The demo's shop could not be opened: ${shop.refused}`);
  const engine = openEngine();
  try {
    const tools = openTools(engine, () => shop.lastSealedHead()?.short ?? null, seededChance(1013), shop.id);
    const teller = openTeller({ shop, tools, engine, clock, zone: STORY.story.zone, print });
    const text =
      machine ?? readFileSync(fileURLToPath(new URL('../../../assets/demo/own-report.txt', import.meta.url)), 'utf8');
    const story = machine === null ? originalStory(readText(text), text) : machineStory(readText(text), text);
    await tellStory(teller, story, () => shop.sealHeads(), until);
    return {
      papers: out === null ? [] : await drawPapers(shop, teller, out),
      ended: until === 'opening' ? null : await teller.sheet(),
    };
  } finally {
    await engine.end();
    await shop.close();
    if (passing !== null) rmSync(passing, { recursive: true, force: true });
  }
}

const placeIn = (folder: string): KeptPlace => ({ data: join(folder, 'shop'), wallet: join(folder, 'wallet.key') });

/** Writes each paper of the job as `KIND-LANGUAGE.pdf`; what was superseded goes to `superseded`. */
async function drawPapers(shop: OpenShop, teller: Teller, out: string): Promise<readonly string[]> {
  const { job, owner } = await teller.sheet();
  const read = await shop.read();
  const paths: string[] = [];
  const used = new Map<string, number>();
  mkdirSync(join(out, 'superseded'), { recursive: true });
  for (const { kind, number } of job.papers) {
    const paper = await issuedPaper(read, number);
    if (!paper) throw new Error(`The paper ${number} cannot be read`);
    const place = paper.supersededBy === null ? out : join(out, 'superseded');
    const key = `${place}/${kind}`;
    const count = (used.get(key) ?? 0) + 1;
    used.set(key, count);
    const path = join(place, `${kind}-${owner.language}${count === 1 ? '' : `-${count}`}.pdf`);
    writeFileSync(path, await drawIssued(paper, { copy: false }));
    paths.push(path);
  }
  return paths;
}
