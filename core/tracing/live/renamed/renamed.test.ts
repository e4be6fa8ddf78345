import { describe, expect, it } from 'vitest';
import { applyShop, noShop, type ShopEntry } from '../../../job/shop.ts';
import { CAUTIONS } from '../cautions.ts';
import { GROUPS } from '../groups.ts';
import { loadFaultModel } from '../loading/loadFaultModel.ts';
import { STANDARD_MODEL_FILES, standardModel } from '../loading/standardModel.ts';
import { knownStep } from '../model/special.ts';
import { changeModel } from '../shop/editModel.ts';
import { modelInUse } from '../shop/shopModel.ts';
import { ALIASES, cautionLetter, currentOutcome, currentStep } from './aliases.ts';
import { renameFiles } from './renameFiles.ts';

const model = standardModel();

/** The delivered files with every list that begins with a renamed group or caution as it was written before. */
function lettered(text: string): string {
  const lists = [...Object.entries(ALIASES.groups), ...Object.entries(ALIASES.cautions)];
  return lists.reduce(
    (so, [letter, word]) => so.replaceAll(new RegExp(`"(groups|cautions)":\\["${word}"`, 'g'), `"$1":["${letter}"`),
    text,
  );
}

/** What a shop's journal held before: an edition of its own, and what was learnt. */
const JOURNAL = `[
  { "stream": "shop", "kind": "model-used", "v": 1, "at": 0, "by": "ann", "body": { "name": "ours", "changes": [
    { "file": "faults.json", "path": "faults.psu-dead.weights.NR", "before": 12, "after": 5 }
  ] } },
  { "stream": "shop", "kind": "priors-learnt", "v": 1, "at": 0, "by": "ann", "body": {
    "counted": 30,
    "excluded": { "named": 0, "handedOver": 0, "notReproduced": 0, "cameBack": 0, "unknown": 0 },
    "counts": [{ "group": "NR", "fault": "fp-switch", "jobs": 30 }]
  } }
]`;

describe('ids that were renamed', () => {
  it('lead to ids that the model has', () => {
    const outcomes = new Set(model.steps.flatMap((step) => step.outcomes.map(({ id }) => `${step.id}:${id}`)));
    const steps = Object.keys(ALIASES.outcomes).map((old) => old.split(':')[0] ?? '');
    expect(
      Object.entries(ALIASES.outcomes).filter(([, now], n) => !outcomes.has(`${currentStep(steps[n] ?? '')}:${now}`)),
    ).toEqual([]);
    expect(Object.values(ALIASES.groups).toSorted()).toEqual([...GROUPS].toSorted());
    expect(Object.values(ALIASES.cautions).filter((now) => !CAUTIONS.some((one) => one === now))).toEqual([]);
    expect(
      [...Object.values(ALIASES.steps), ...Object.values(ALIASES.is)].filter((id) => !model.stepIndex.has(id)),
    ).toEqual([]);
    expect(Object.keys(ALIASES.kinds).filter((id) => !model.stepIndex.has(id))).toEqual([]);
  });

  it('are the outcomes of the watched first start by their groups, and no other step’s', () => {
    expect(currentOutcome('watch-start', 'np')).toBe('no-post');
    expect(currentOutcome('watch-start', 'no-post')).toBe('no-post');
    expect(currentOutcome('card-loan', 'np')).toBe('np');
    expect(
      knownStep(model, 'watch-start')
        ?.outcomes.map(({ id }) => id)
        .toSorted(),
    ).toEqual([...GROUPS].toSorted());
  });

  it('stand behind every caution, by which bench cases name it', () => {
    expect(cautionLetter('disk-key')).toBe('D');
    expect(new Set(CAUTIONS.map(cautionLetter)).size).toBe(CAUTIONS.length);
  });
});

describe('a shop’s own model with the ids of before', () => {
  it('loads as the model it was', () => {
    const old: unknown = JSON.parse(lettered(JSON.stringify(STANDARD_MODEL_FILES)));
    expect(old).not.toEqual(STANDARD_MODEL_FILES);
    const loaded = loadFaultModel(old as typeof STANDARD_MODEL_FILES);
    if ('refused' in loaded) throw new Error(`${loaded.file} ${loaded.field}: ${loaded.because}`);
    expect(loaded.steps).toEqual(model.steps);
    expect(loaded.symptoms).toEqual(model.symptoms);
  });

  it('keeps its changes: keys, values and ways that name what was renamed', () => {
    const changed = changeModel(STANDARD_MODEL_FILES, [
      { file: 'faults.json', path: 'faults.psu-dead.weights.NR', before: 12, after: 5 },
      { file: 'faults.json', path: 'faults.psu-dead.profile', before: 'S', after: 'L' },
      { file: 'faults.json', path: 'profiles.L.perStart', before: 0.03, after: 0.04 },
      { file: 'steps.json', path: 'steps.look-mains.cautions', before: ['M'], after: ['M', 'E'] },
      { file: 'steps.json', path: 'steps.watch-start.outcomes.nr.life', after: 'none' },
    ]);
    if ('refused' in changed) throw new Error(`${changed.field}: ${changed.because}`);
    const fault = changed.model.faults.find(({ id }) => id === 'psu-dead');
    expect(fault?.weights).toEqual({ 'no-reaction': 5 });
    expect(fault?.rate.perStart).toBe(0.04);
    const step = (id: string) => knownStep(changed.model, id);
    expect(step('look-mains')?.cautions).toEqual(['mains', 'static']);
    expect(step('watch-start')?.outcomes.find(({ id }) => id === 'no-reaction')?.life).toBe('none');
  });

  it('says its deeds in the field of before', () => {
    const old = JSON.parse(JSON.stringify(STANDARD_MODEL_FILES['deeds.json']).replaceAll('"deeds":', '"does":'));
    expect(old.work[0]).toHaveProperty('does');
    const loaded = loadFaultModel({ ...STANDARD_MODEL_FILES, 'deeds.json': old });
    if ('refused' in loaded) throw new Error(`${loaded.file} ${loaded.field}: ${loaded.because}`);
    expect(loaded.steps).toEqual(model.steps);
    expect(loaded.work).toEqual(model.work);
    const changed = changeModel(STANDARD_MODEL_FILES, [
      { file: 'deeds.json', path: 'steps.fan-finger.does', after: ['mains-on', 'start', 'load'] },
    ]);
    if ('refused' in changed) throw new Error(`${changed.field}: ${changed.because}`);
    expect(knownStep(changed.model, 'fan-finger')?.deeds).toContain('load');
  });

  it('is renamed to itself when it has the ids of today', () => {
    expect(renameFiles(STANDARD_MODEL_FILES)).toEqual(STANDARD_MODEL_FILES);
  });

  it('is in use from a journal of before, with what was learnt', () => {
    const entries: readonly ShopEntry[] = JSON.parse(JOURNAL);
    const shop = entries.reduce(applyShop, noShop);
    const inUse = modelInUse({ changes: shop.models[0]?.changes ?? [], learnt: shop.learnt });
    expect(inUse.refused).toBeNull();
    const moved = inUse.moved.find(({ fault }) => fault === 'fp-switch');
    expect(moved).toMatchObject({ group: 'no-reaction', jobs: 30 });
  });
});
