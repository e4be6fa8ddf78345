import { describe, expect, it } from 'vitest';
import type { ModelRefusal } from '../types.ts';
import { loadFaultModel } from './loadFaultModel.ts';
import { STANDARD_MODEL_FILES, standardModel } from './standardModel.ts';

// biome-ignore lint/suspicious/noExplicitAny: the files are changed field by field, as a careless hand would
type Files = { [file: string]: any };

const changed = (change: (files: Files) => void) => {
  const files = structuredClone(STANDARD_MODEL_FILES) as Files;
  change(files);
  return loadFaultModel(files) as ModelRefusal;
};
const step = (files: Files, id: string) => files['steps.json'].steps.find((each: { id: string }) => each.id === id);

describe('the fault model as delivered', () => {
  const model = standardModel();

  it('knows at least 60 faults and 80 steps, each with a source note', () => {
    expect(model.faults.length).toBeGreaterThanOrEqual(60);
    expect(model.steps.length).toBeGreaterThanOrEqual(80);
    for (const each of [...model.faults, ...model.steps, ...model.gates, ...model.pairs, ...model.evidence])
      expect(each.source).not.toBe('');
  });

  it('has rows that sum to one for every step and fault', () => {
    model.rows.forEach((rows, s) => {
      for (const row of [...rows, model.nothing[s], model.ours[s]])
        if (row) expect(row.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
      for (const row of Object.values(model.byGroup[s] ?? {})) expect(row.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
    });
  });

  it('lists no faults as inseparable that a step of its own tells apart', () => {
    expect(model.inseparable).toEqual([]);
  });
});

describe('a fault model is refused by file and field', () => {
  const cases: readonly [string, (files: Files) => void, string, RegExp][] = [
    [
      'chances that do not sum to one',
      (f) => {
        step(f, 'meas-rails').others.within = 0.9;
      },
      'steps.json',
      /meas-rails\.others/,
    ],
    [
      'a negative minute',
      (f) => {
        step(f, 'meas-rails').handsOn = -1;
      },
      'steps.json',
      /handsOn/,
    ],
    [
      'an unknown fault in a rule',
      (f) => {
        step(f, 'meas-rails').tells[0].faults = ['no-such'];
      },
      'steps.json',
      /tells/,
    ],
    [
      'an outcome that is not there',
      (f) => {
        step(f, 'meas-rails').tells[0].chance = { good: 1 };
      },
      'steps.json',
      /tells\[0\]/,
    ],
    [
      'an unknown handling',
      (f) => {
        step(f, 'dimm-press').does = ['magic'];
      },
      'steps.json',
      /dimm-press/,
    ],
    [
      'a swap that borrows nothing',
      (f) => {
        step(f, 'dimm-loan').handling.borrows = null;
      },
      'steps.json',
      /borrows/,
    ],
    [
      'parts out without the caution for mains',
      (f) => {
        step(f, 'card-loan').cautions = ['E', 'B'];
      },
      'steps.json',
      /cautions/,
    ],
    [
      'a write to the owner’s disk without its caution',
      (f) => {
        step(f, 'mend-start').cautions = [];
      },
      'steps.json',
      /cautions/,
    ],
    [
      'a step twice',
      (f) => {
        f['steps.json'].steps.push(step(f, 'meas-rails'));
      },
      'steps.json',
      /steps\[100\]\.id/,
    ],
    [
      'open and closed that cannot both hold',
      (f) => {
        step(f, 'dimm-loan').closed = ['panel'];
      },
      'steps.json',
      /dimm-loan/,
    ],
    [
      'a cycle in the assembly',
      (f) => {
        f['assembly.json'].states[0].within = 'board';
      },
      'assembly.json',
      /within/,
    ],
    [
      'a gate that waits for itself',
      (f) => {
        f['dangers.json'].gates[0].holds.push('look-inside');
      },
      'dangers.json',
      /holds/,
    ],
    [
      'a gate on an outcome that does not exist',
      (f) => {
        f['dangers.json'].gates[0].until[0][0].outcomes = ['fine-weather'];
      },
      'dangers.json',
      /until/,
    ],
    [
      'two faults that nothing tells apart',
      (f) => {
        const [one] = f['faults.json'].faults;
        f['faults.json'].faults.push({ ...one, id: 'this-one' }, { ...one, id: 'that-one' });
      },
      'faults.json',
      /that-one/,
    ],
    [
      'no faults',
      (f) => {
        f['faults.json'].faults = [];
      },
      'steps.json',
      /./,
    ],
    [
      'a missing file',
      (f) => {
        delete f['told.json'];
      },
      'told.json',
      /^$/,
    ],
    [
      'a strange file',
      (f) => {
        f['more.json'] = {};
      },
      'more.json',
      /^$/,
    ],
    [
      'a made-up field',
      (f) => {
        step(f, 'meas-rails').colour = 'red';
      },
      'steps.json',
      /steps/,
    ],
  ];
  for (const [what, change, file, field] of cases) {
    it(what, () => {
      const refusal = changed(change);
      expect(refusal).toMatchObject({ refused: 'fault-model', file });
      expect(refusal.field).toMatch(field);
      expect(refusal.because.length).toBeGreaterThan(5);
    });
  }
});
