import { createHash } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { COMMANDS, type CommandName } from '../../../core/commands/commands.ts';
import { zPreview } from '../../../core/contract/contract.ts';
import { ENTRY_TABLE } from '../../../core/entries/entryTable.ts';
import type { Refusal } from '../../../core/refusal.ts';
import { STAGES, type Stage } from '../../../core/stage.ts';
import { keysOf } from '../../../core/table.ts';
import type { Reader } from '../../../db/index.ts';
import { whyNotAppended } from '../../../db/journal/whyNotAppended.ts';
import { fewSteps } from '../../../tests/builders/desk.ts';
import { type Everything, everything } from '../../../tests/builders/everything.ts';
import { readerApart } from '../../../tests/builders/readerApart.ts';
import { stageEntered } from '../../../tests/builders/shopEntries.ts';
import { write } from '../../../tests/builders/shopFolder.ts';
import { seededChance } from '../../cli/demo/seededChance.ts';
import { openEngine } from '../openEngine.ts';
import { openTools } from '../openTools.ts';
import { lookedAt } from './lookedAt.ts';

/*
 * Every command, with every stream set apart that it could come upon: it is refused by that stream's name, or comes to the
 * very same as in a shop that can be read whole. What it never does is come to something else, as if nothing stood there.
 */

const words = openTools(openEngine(), () => null);

/** What a command comes to on what a reader sees, up to the journal’s own door: its entries, or the refusal. */
async function comesTo(read: Reader, { desk, asked }: Everything, name: CommandName): Promise<unknown> {
  const { now } = desk.folder.clock;
  const tools = {
    ...seededChance(99),
    sha256: (text: string) => createHash('sha256').update(text, 'utf8').digest('hex'),
    lastHead: null,
    tracing: () => fewSteps,
    jobWords: words.jobWords,
    paperSetting: words.paperSetting,
  };
  const preview = zPreview.parse({ by: 'bram', name, input: asked[name] });
  const looked = await lookedAt(read, desk.shop, tools, preview, now);
  if ('refusal' in looked) return looked.refusal;
  const decision = looked.draft();
  if (!decision.ok) return decision.refusal;
  return (await whyNotAppended(read, decision.entries, { at: now, by: 'bram' })) ?? decision.entries;
}

const isRefused = (what: unknown): what is Refusal => !Array.isArray(what);

const names = keysOf(COMMANDS);
const isAllowed = (name: CommandName, stage: Stage) => {
  const { stages } = COMMANDS[name];
  return stages === 'no-job' ? stage === 'tracing' : stages.some((one) => one === stage);
};
const isAllowedAfter = (name: CommandName, stage: Stage) =>
  STAGES.slice(STAGES.indexOf(stage) + 1).some((later) => isAllowed(name, later));

/**
 * What comes to something else all the same: other jobs under way are only looked past. Nobody can act on one that is set
 * apart, its clock neither, so that it is not paused, nor goes on; held back, one entry would stop the whole bench.
 */
const OTHER_CLOCKS: ReadonlySet<string> = new Set([
  'finishWork: job elsewhere',
  'logWork: job elsewhere',
  'startWork: job elsewhere',
  // Of no job by itself: it stops whatever clocks it sees.
  'stopClocks: job',
  'stopClocks: job elsewhere',
  'takeBackStart: job elsewhere',
  'turnWork: job elsewhere',
]);

const otherClocks = new Set<string>();
const carriedOut = new Set<CommandName>();
const byName = new Map<string, Set<CommandName>>();

describe.each([
  ['with a step under way', true],
  ['with free hands', false],
])('every command, %s, with every stream set apart', (_hands, busy) => {
  let at: Everything;
  const tried = new Set<CommandName>();
  beforeAll(async () => {
    at = await everything(busy);
  }, 60_000);
  afterAll(() => at.desk.close());

  it.each(STAGES)(
    'at %s: is refused by its name, or comes to the same',
    async (stage) => {
      const { desk, job, streams } = at;
      await write(desk.shop, stageEntered(job, stage));
      const walkedAround: unknown[] = [];
      for (const name of names.filter((one) => isAllowed(one, stage) && !tried.has(one))) {
        const whole = await comesTo(await desk.shop.read(), at, name);
        // Tried where it is carried out; what never is, at the last stage at which it may be asked.
        if (isRefused(whole) && isAllowedAfter(name, stage)) continue;
        tried.add(name);
        if (!isRefused(whole)) carriedOut.add(name);
        for (const [what, stream] of Object.entries(streams)) {
          const apart = await comesTo(readerApart(await desk.shop.read(), stream), at, name);
          if (isRefused(apart) && apart.refused === 'stream-set-apart' && apart.stream === stream)
            byName.set(what, (byName.get(what) ?? new Set()).add(name));
          else if (JSON.stringify(apart) !== JSON.stringify(whole)) {
            if (OTHER_CLOCKS.has(`${name}: ${what}`)) otherClocks.add(`${name}: ${what}`);
            else walkedAround.push({ name, what, whole, apart });
          }
        }
      }
      expect(walkedAround).toEqual([]);
    },
    120_000,
  );

  it('is tried', () => {
    expect([...tried].toSorted()).toEqual(names.toSorted());
    const subjects = new Set(Object.values(at.streams).map((stream) => stream.split(':')[0]));
    expect([...subjects].toSorted()).toEqual(keysOf(ENTRY_TABLE).toSorted());
  });
});

it('most are carried out where nothing is set apart, and streams of every subject but papers hold some back', () => {
  expect(carriedOut.size).toBeGreaterThan((names.length * 2) / 3);
  const held = { job: 70, owner: 70, machine: 70, 'part of theirs': 70, 'part that moves with it': 70, shop: 40 };
  for (const [what, least] of Object.entries(held)) expect(byName.get(what)?.size, what).toBeGreaterThan(least);
  for (const what of ['part in the rig', 'older job', 'owner from before', 'machine from before', 'enquiry', 'people'])
    expect(byName.get(what)?.size, what).toBeGreaterThan(0);
  expect([...(byName.get('rig') ?? [])].toSorted()).toContain('moveShopPart');
  expect(byName.has('paper')).toBe(false);
  expect([...otherClocks].toSorted()).toEqual([...OTHER_CLOCKS].toSorted());
});
