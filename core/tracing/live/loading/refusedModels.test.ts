import { describe, expect, it } from 'vitest';
import { changed, type Files, step } from '../../../../tests/builders/brokenModel.ts';

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
      /steps\[\d+\]\.id/,
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
      'faults.json',
      /^faults$/,
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
    [
      'a row that is off by a millionth',
      (f) => {
        step(f, 'meas-rails').others.within += 1e-6;
      },
      'steps.json',
      /meas-rails\.others/,
    ],
    [
      'a negative chance',
      (f) => {
        step(f, 'meas-rails').others.within = -0.1;
      },
      'steps.json',
      /others\.within/,
    ],
    [
      'a step that is no plain trial and does not say what it shows otherwise',
      (f) => {
        delete step(f, 'meas-rails').others;
        delete step(f, 'meas-rails').nothing;
      },
      'steps.json',
      /others/,
    ],
    [
      'an unknown fault that a handling mends',
      (f) => {
        f['handlings.json'].handlings.drain['no-such'] = 0.5;
      },
      'handlings.json',
      /drain/,
    ],
    [
      'an unknown fault that harms',
      (f) => {
        f['dangers.json'].harm[0].fault = 'no-such';
      },
      'dangers.json',
      /harm\[0\]/,
    ],
    [
      'a harm without a source',
      (f) => {
        delete f['dangers.json'].harm[0].source;
      },
      'dangers.json',
      /harm\.0\.source/,
    ],
    [
      'an unknown fault in what was told',
      (f) => {
        f['told.json'].evidence[0].multiplies['no-such'] = 2;
      },
      'told.json',
      /evidence/,
    ],
    [
      'an unknown fault in a listed pair',
      (f) => {
        f['pairs.json'].pairs[0].faults[1] = 'no-such';
      },
      'pairs.json',
      /pairs\[0\]/,
    ],
    [
      'an unknown step in the habit order',
      (f) => {
        f['shop.json'].habit.first.push('no-such');
      },
      'shop.json',
      /habit/,
    ],
    [
      'an unknown state to be open',
      (f) => {
        step(f, 'meas-rails').open = ['no-such'];
      },
      'steps.json',
      /meas-rails\.open/,
    ],
    [
      'a state within one that is not there',
      (f) => {
        f['assembly.json'].states[1].within = 'no-such';
      },
      'assembly.json',
      /states\[1\]\.within/,
    ],
    [
      'a cycle that only a switch closes',
      (f) => {
        f['assembly.json'].switches[0].within = { cooler: 'cpu' };
      },
      'assembly.json',
      /switches\[0\]/,
    ],
    [
      'a cycle that only two switches together close',
      (f) => {
        f['assembly.json'].switches[0].within = { dimms: 'cooler' };
        f['assembly.json'].switches[1].within = { cooler: 'dimms' };
      },
      'assembly.json',
      /all together/,
    ],
    [
      'open and closed that cannot both hold once a switch is answered yes',
      (f) => {
        step(f, 'dimm-loan').closed = ['cooler'];
      },
      'steps.json',
      /dimm-loan\.closed/,
    ],
    [
      'a switch that moves an unknown step',
      (f) => {
        f['assembly.json'].switches[1].withinSteps = { card: ['no-such'] };
      },
      'assembly.json',
      /withinSteps/,
    ],
    [
      'a swap of what needs no borrowing, called a swap all the same',
      (f) => {
        step(f, 'card-slot2').kind = 'swap';
      },
      'steps.json',
      /borrows/,
    ],
    [
      'a loaner that goes where another kind sits',
      (f) => {
        step(f, 'dimm-loan').handling.intoSlotOf = 'card';
      },
      'steps.json',
      /intoSlotOf/,
    ],
    [
      'two gates that wait for each other',
      (f) => {
        const [one] = f['dangers.json'].gates;
        const wait = (id: string, holds: string, first: string, outcome: string) => ({
          ...one,
          id,
          holds: [holds],
          until: [[{ step: first, outcomes: [outcome] }]],
        });
        f['dangers.json'].gates.push(
          wait('there', 'meas-coils', 'feel-heat', 'even'),
          wait('back', 'feel-heat', 'meas-coils', 'fine'),
        );
      },
      'dangers.json',
      /holds/,
    ],
    [
      'a gate on an unknown fault',
      (f) => {
        f['dangers.json'].gates[5].when.faults = ['no-such'];
      },
      'dangers.json',
      /gates\[5\]\.when/,
    ],
    [
      'one fault only',
      (f) => {
        f['faults.json'].faults.length = 1;
      },
      'faults.json',
      /^faults$/,
    ],
    [
      'more than a thousand steps',
      (f) => {
        const one = step(f, 'meas-rails');
        f['steps.json'].steps.push(...Array.from({ length: 1000 }, (_, n) => ({ ...one, id: `more-${n}` })));
      },
      'steps.json',
      /^steps$/,
    ],
    [
      'an inseparable set with an unknown fault',
      (f) => {
        f['faults.json'].inseparable = [['psu-dead', 'no-such']];
      },
      'faults.json',
      /inseparable\[0\]/,
    ],
  ];
  for (const [what, change, file, field] of cases) {
    it(what, () => {
      const refusal = changed(change);
      if (!refusal) throw new Error('it was taken');
      expect(refusal).toMatchObject({ refused: 'fault-model', file });
      expect(refusal.field).toMatch(field);
      expect(refusal.because.length).toBeGreaterThan(5);
    });
  }
});

describe('a fault model with a thousand steps', () => {
  it('is read, or refused, within ten seconds of computing', () => {
    const from = process.cpuUsage();
    const refusal = changed((f) => {
      const { steps } = f['steps.json'];
      const copies = Array.from({ length: 1000 - steps.length }, (_, n) => ({ ...steps[n % 90], id: `more-${n}` }));
      steps.push(...copies);
      const { steps: deeds } = f['deeds.json'];
      deeds.push(...copies.map(({ id }, n) => ({ id, deeds: deeds[n % 90].deeds })));
    });
    expect(refusal).toBeNull();
    expect(process.cpuUsage(from).user / 1e6).toBeLessThan(10);
  }, 60_000);
});

describe('faults that nothing tells apart', () => {
  it('are taken when they are listed as inseparable', () => {
    const twins = (listed: readonly string[][]) =>
      changed((f) => {
        const [one] = f['faults.json'].faults;
        f['faults.json'].faults.push({ ...one, id: 'this-one' }, { ...one, id: 'that-one' });
        f['faults.json'].inseparable = listed;
      });
    expect(twins([])).toMatchObject({ file: 'faults.json', because: expect.stringContaining('this-one') });
    expect(twins([['this-one', 'that-one']])).toBeNull();
  });
});
