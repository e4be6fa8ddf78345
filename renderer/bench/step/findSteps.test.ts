import { describe, expect, it } from 'vitest';
import tracing from '../../../assets/words/en/tracing.json';
import { findSteps } from './findSteps.ts';

const STEPS = Object.entries(tracing.steps).map(([id, { name, does }]) => ({ id, says: `${name} ${does}` }));

describe('a step is found', () => {
  it('by what it is called, whole or in pieces, in any order', () => {
    expect(findSteps(STEPS, 'latch memory')).toContain('dimm-press');
    expect(findSteps(STEPS, '')).toHaveLength(STEPS.length);
  });
  it('by the words that technicians use for the same thing', () => {
    const wanted: Readonly<Record<string, string>> = {
      ssd: 'drive-health',
      gpu: 'card-loan',
      psu: 'supply-beside',
      disk: 'drive-read',
      bios: 'setup-default',
      cmos: 'cmos-clear',
      battery: 'cell-measure',
      swap: 'dimm-loan',
      ram: 'dimm-one',
      wifi: 'aerial-again',
    };
    for (const [typed, step] of Object.entries(wanted)) expect(findSteps(STEPS, typed), typed).toContain(step);
  });
  it('with those first that say it in their own words', () => {
    const found = findSteps(STEPS, 'battery');
    expect(found.indexOf('battery-out')).toBeLessThan(found.indexOf('cell-measure'));
  });
  it('not at all where nothing is called that', () => {
    expect(findSteps(STEPS, 'flux capacitor')).toEqual([]);
  });
});
