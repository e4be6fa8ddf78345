import { describe, expect, it } from 'vitest';
import assembly from '../../assets/fault-model/assembly.json' with { type: 'json' };
import dangers from '../../assets/fault-model/dangers.json' with { type: 'json' };
import faults from '../../assets/fault-model/faults.json' with { type: 'json' };
import safety from '../../assets/fault-model/safety.json' with { type: 'json' };
import steps from '../../assets/fault-model/steps.json' with { type: 'json' };
import toldOf from '../../assets/fault-model/told.json' with { type: 'json' };
import work from '../../assets/labour/work.json' with { type: 'json' };
import history from '../../assets/words/en/history.json' with { type: 'json' };
import words from '../../assets/words/en/tracing.json' with { type: 'json' };
import { EQUIPMENT_KINDS, PART_KINDS } from '../../core/custody/part.ts';

const without = (ids: readonly string[], catalogue: object) =>
  [...new Set(ids)].filter((id) => {
    const found: unknown = (catalogue as Record<string, unknown>)[id];
    const said = typeof found === 'object' && found !== null ? Object.values(found) : [found];
    return said.length === 0 || said.some((text) => typeof text !== 'string' || text.trim() === '');
  });

describe('what the fault model names, people can read', () => {
  it('every step, with what is done', () => {
    expect(
      without(
        steps.steps.map((step) => step.id),
        words.steps,
      ),
    ).toEqual([]);
  });
  it('every outcome of every step', () => {
    const outcomes: { readonly [id: string]: string } = words.outcomes;
    const silent = steps.steps.flatMap((step) =>
      step.outcomes
        .map((outcome) => outcome.id)
        .filter((outcome) => !outcomes[`${step.id}.${outcome}`] && !outcomes[outcome])
        .map((outcome) => `${step.id}: ${outcome}`),
    );
    expect(silent).toEqual([]);
  });
  it('every fault, its part, every state, gate, caution and need', () => {
    expect(
      without(
        faults.faults.map((fault) => fault.id),
        words.faults,
      ),
    ).toEqual([]);
    expect(
      without(
        faults.faults.map((fault) => fault.part),
        words.kinds,
      ),
    ).toEqual([]);
    expect(
      without(
        assembly.states.map((state) => state.id),
        words.states,
      ),
    ).toEqual([]);
    expect(
      without(
        [...dangers.gates, ...safety.rules].map((gate) => gate.id),
        words.gates,
      ),
    ).toEqual([]);
    expect(
      without(
        steps.steps.flatMap((step) => step.cautions),
        words.cautions,
      ),
    ).toEqual([]);
    expect(
      without(
        steps.steps.flatMap((step) => step.needs),
        words.needs,
      ),
    ).toEqual([]);
  });
  it('every kind of part and tool, every task and proof that follows', () => {
    expect(without([...PART_KINDS, ...EQUIPMENT_KINDS], words.kinds)).toEqual([]);
    expect(
      without(
        work.work.map((task) => task.id),
        words.tasks,
      ),
    ).toEqual([]);
  });
  it('every history that the owner can tell', () => {
    const told = { ...history.changed, ...history.often, ...history['only-when'] };
    expect(
      without(
        toldOf.evidence.map((evidence) => evidence.id),
        told,
      ),
    ).toEqual([]);
  });
});
