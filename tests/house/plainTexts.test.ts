import { describe, expect, it } from 'vitest';
import { ENTRY_TABLE, knownKind } from '../../core/entries/entryTable.ts';
import { SEALED_TEXTS, sealedTextsIn } from '../../core/entries/sealedTexts.ts';
import { plainTexts } from './plainTexts.ts';

/**
 * Where text may stand in plain in the journal, and why that is right: by its place in a body, in whatever kind. All
 * other text is an owner's, and sealed: as a personal value, or by `SEALED_TEXTS`.
 */
const PLAIN: { readonly [why: string]: readonly string[] } = {
  'an id, a digest, or a word of a list: nobody types it': [
    'answer.heardBy',
    'answer.how.file',
    'answer.how.signature.contentHash',
    'answer.options[]',
    'also[]',
    'answers{}',
    'blob',
    'by',
    'cameAlong[].id',
    'certificate',
    'contentHash',
    'counts[].fault',
    'counts[].group',
    'digest',
    'drivers[]',
    'engine.fault',
    'estimate.drivers[]',
    'evidence[]',
    'fault',
    'from',
    'how.file',
    'how.signature.contentHash',
    'id',
    'inside{}',
    'job',
    'kind',
    'language',
    'leftOut[]',
    'number',
    'offer.afterwards[].task',
    'offer.notKnown[]',
    'offer.rows[].attribute',
    'offer.rows[].notes[].attribute',
    'often[]',
    'options[].agrees.order.order',
    'options[].id',
    'order',
    'outcome',
    'photographs[]',
    'question',
    'run',
    'signature.contentHash',
    'standing.before',
    'standing.evidence.by',
    'standing.evidence.where',
    'standing.job',
    'standing.to[]',
    'standing.why',
    'supersedes',
    'switches{}',
    'symptoms[]',
    'tasks[]',
    'tasks[].id',
    'told.changed[].id',
    'told.often[]',
    'told.onlyWhen[]',
    'told.symptoms[]',
    'unknown[]',
    'verifiedBy',
    'what',
    'why',
    'why.answer',
    'why.order',
    'why.run',
    'why.step',
  ],
  'what the shop says of itself, and what it calls its own model, things and suppliers': [
    'changes[].after',
    'changes[].before',
    'changes[].file',
    'changes[].path',
    'name',
    'settings.address',
    'settings.benches[]',
    'settings.language',
    'settings.locale',
    'settings.name',
    'settings.notCollectedText',
    'settings.open[].from',
    'settings.open[].to',
    'settings.phone',
    'settings.promises.closed[]',
    'settings.rigs[]',
    'settings.scanSign',
    'settings.zone',
    'supplier',
    'thing',
  ],
  'what a machine and its parts are, as its makers made them: fit is reckoned by it; serial numbers are sealed': [
    'attributes{}',
    'attributes{}[]',
    'offer.rows[].members[].had',
    'offer.rows[].members[].had[]',
    'offer.rows[].members[].offered',
    'offer.rows[].members[].offered[]',
    'report.board.name',
    'report.board.vendor',
    'report.cards[].kind',
    'report.cards[].name',
    'report.chassis',
    'report.drives[].kind',
    'report.drives[].model',
    'report.firmware.date',
    'report.firmware.vendor',
    'report.firmware.version',
    'report.gaps[]',
    'report.kinds[]',
    'report.memory[].bank',
    'report.memory[].formFactor',
    'report.memory[].locator',
    'report.memory[].type',
    'report.processors[].name',
    'report.processors[].socket',
    'report.system.name',
    'report.system.vendor',
    'slot',
    'slots[]',
    'slots[].attributes{}',
    'slots[].attributes{}[]',
    'slots[].channel',
    'slots[].id',
    'took[].slot',
    'which.id',
    'unplugged[]',
  ],
  'what is sold: lines are told apart by it; the bill must keep it by law': [
    'line',
    'offer.extras[].what',
    'options[].agrees.items[].what',
  ],
  'where a part is: custody is looked up by it in the read tables': [
    ...['place', 'from', 'to'].flatMap((of) =>
      ['slot', 'rig', 'bench', 'tray', 'bin', 'shelf', 'name', 'certificate'].map((field) => `${of}.${field}`),
    ),
  ],
};

const kinds = Object.values(ENTRY_TABLE).flatMap(({ bodies }) => Object.entries(bodies));
const places = kinds.flatMap(([kind, shape]) => [...new Set(plainTexts(shape))].map((path) => ({ kind, path })));
const isSealed = ({ kind, path }: { readonly kind: string; readonly path: string }) =>
  sealedTextsIn(kind).includes(path);

/** Kinds in which a place that is the shop's own elsewhere could hold an owner's words: there it is sealed, or is an id. */
const SAID_TWICE: ReadonlySet<string> = new Set(['name', 'what', 'why', 'thing', 'from', 'number', 'unplugged[]']);
const PLAIN_HERE: ReadonlySet<string> = new Set([
  'model-used name',
  'model-gone-back from',
  'work-started what',
  'work-finished what',
  'stage-entered why',
  'part-standing why',
  'part-ordered what',
  'sold-part-named what',
  'line-agreed what',
  'ours-on thing',
  'ours-off thing',
  'paper-issued number',
  'paper-named number',
  'arrangement-tried unplugged[]',
  'work-started unplugged[]',
]);

describe('text in the journal', () => {
  it('is sealed, or is decided to stand in plain with a reason', () => {
    const decided = new Set(Object.values(PLAIN).flat());
    const open = places.filter(
      (place) =>
        !isSealed(place) &&
        (!decided.has(place.path) || (SAID_TWICE.has(place.path) && !PLAIN_HERE.has(`${place.kind} ${place.path}`))),
    );
    expect(open.map(({ kind, path }) => `${kind} ${path}`)).toEqual([]);
  });

  it('has no reason for a place that is not there', () => {
    const there = new Set(places.filter((place) => !isSealed(place)).map(({ path }) => path));
    expect(
      Object.values(PLAIN)
        .flat()
        .filter((path) => !there.has(path)),
    ).toEqual([]);
  });

  it('that is said to be sealed stands in a kind that there is, in a version after its first', () => {
    for (const [kind, { at: paths }] of Object.entries(SEALED_TEXTS)) {
      const own = places.filter((place) => place.kind === kind).map(({ path }) => path);
      expect(
        paths.filter((path) => !own.includes(path)),
        kind,
      ).toEqual([]);
      const newest = Object.keys(ENTRY_TABLE).flatMap((subject) => knownKind(subject, kind)?.v ?? []);
      expect(
        newest.every((v) => v > 1),
        kind,
      ).toBe(true);
    }
  });
});
