import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { standardModel } from '../../../core/tracing/live/loading/standardModel.ts';
import { describeOverOpenData } from '../../openData.ts';
import { impliedMix, lookLine, processorLook, typeLooks, typeOf } from './outsideLooks.ts';

const model = standardModel();

it('the priors imply far fewer processors than crash reports count, and the table says why', () => {
  const look = processorLook(model);
  expect(look.agrees).toBe(false);
  expect(look.implied).toBeLessThan(look.interval.low);
  expect(lookLine(look)).toContain('crashes');
});

it('every symptom group weighs the same, and the shares sum to one', () => {
  const shares = [...impliedMix(model, typeOf).values()];
  expect(shares.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
});

/** Fault types that volunteers gave in 2021: Open Repair Alliance and its data partners, CC BY-SA 4.0. */
describeOverOpenData('the mix of faults beside the open repair data', (data) => {
  const csv = () =>
    data.files('open-repair', /^desktop-fault-types\.csv$/).map((file) => readFileSync(file, 'utf8'))[0] ?? '';

  it('reads every typed desktop record, and says where the two disagree and why', () => {
    const looks = typeLooks(model, csv());
    const all = csv().match(/^[\w-]+_\d+,[^,\n]*,[A-Z]{3},\d+,/gm) ?? [];
    expect(all.length).toBe(181);
    const [first] = looks;
    expect(first?.of).toBe(looks.reduce((sum, look) => sum + look.count, 0));
    for (const look of [...looks, processorLook(model)]) {
      console.info(lookLine(look));
      if (!look.agrees) expect(look.reason.length).toBeGreaterThan(20);
    }
  });

  it('puts power among the most usual, as the events do', () => {
    const byShare = typeLooks(model, csv()).toSorted((a, b) => b.implied - a.implied);
    expect(byShare.slice(0, 4).map((look) => look.what)).toContain('Power/battery');
  });
});
