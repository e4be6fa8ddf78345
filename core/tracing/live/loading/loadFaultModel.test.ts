import { describe, expect, it } from 'vitest';
import { changed, type Files } from '../../../../tests/builders/brokenModel.ts';
import { CAUTIONS } from '../cautions.ts';
import { checkModel } from '../checks/checkModel.ts';
import { ModelFault } from '../model/refusal.ts';
import { openTracing } from '../openTracing.ts';
import type { ModelData, ModelRefusal } from '../types.ts';
import { standardModel } from './standardModel.ts';

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

describe('a step that can hurt people, parts or data', () => {
  /** What checking says to a model that was read; null when it is taken. */
  const refusalOf = (data: ModelData): ModelRefusal | null => {
    try {
      checkModel(openTracing(data));
      return null;
    } catch (error) {
      if (error instanceof ModelFault) return error.refusal;
      throw error;
    }
  };
  const set = (files: Files, at: number, cautions: readonly string[]) => {
    files['steps.json'].steps[at].cautions = cautions;
  };

  it('is refused without the caution for it, whichever caution that is', () => {
    const model = standardModel();
    const needed = new Set<string>();
    model.steps.forEach((step, at) => {
      for (const caution of step.cautions) {
        const cautions = step.cautions.filter((one) => one !== caution);
        const refusal = refusalOf({ ...model, steps: model.steps.with(at, { ...step, cautions }) });
        if (!refusal) continue;
        expect(refusal).toMatchObject({ file: 'steps.json', field: `steps[${at}] ${step.id}.cautions` });
        expect(refusal.because).toContain(`caution ${caution} is missing`);
        // Reading its files says so too: once of each caution, for that is what takes long.
        if (!needed.has(caution)) expect(changed((files) => set(files, at, cautions))).toEqual(refusal);
        needed.add(caution);
      }
    });
    // Sharp edges, lifting and a battery depend on the case at hand, and are said beside the look inside.
    expect(CAUTIONS.filter((caution) => !needed.has(caution))).toEqual(['sharp', 'lift', 'battery']);
  }, 120_000);
});

describe('every prior, minute, chance and harm', () => {
  /** Every `source` and `note` of the files, as a way of places to it. */
  const sources = (value: unknown, way: readonly string[] = []): string[][] =>
    typeof value !== 'object' || value === null
      ? []
      : Object.entries(value).flatMap(([key, one]) =>
          ['source', 'note', 'kappaSource'].includes(key) && typeof one === 'string'
            ? [[...way, key]]
            : sources(one, [...way, key]),
        );
  const set = (files: Files, way: readonly string[], text: string) => {
    const last = way.at(-1) as string;
    // biome-ignore lint/suspicious/noExplicitAny: a way of places through plain files
    const box = way.slice(0, -1).reduce<any>((at, key) => at[key], files);
    box[last] = text;
  };

  it('carries a note of its source: one that names none is refused, wherever it stands', () => {
    const kinds = new Map<string, string[]>();
    changed((files) => {
      for (const way of sources(files)) kinds.set(way.map((key) => (/^\d+$/.test(key) ? '#' : key)).join('/'), way);
    });
    expect(kinds.size).toBeGreaterThan(20);
    for (const [kind, way] of kinds) {
      const refusal = changed((files) => set(files, way, 'everybody knows'));
      expect(refusal, kind).toMatchObject({ file: way[0], because: expect.stringContaining('names no source') });
    }
  }, 60_000);
});
