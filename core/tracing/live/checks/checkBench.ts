import { ModelFault } from '../model/refusal.ts';
import { knownStep } from '../model/special.ts';
import type { OutcomesByStep } from '../model/usedIds.ts';
import { canBeRead } from '../readings/codes.ts';
import type { FaultModel } from '../types.ts';

/** The steps that a typed reading can be a finding of, and the outcomes it can come to. */
export const FINDINGS: OutcomesByStep = {
  'meas-rails': ['within', 'outside', 'no-power-good'],
  'meas-standby': ['within', 'no-standby', 'low', 'switch-dead', 'switch-stuck'],
  'wall-watts': ['nothing', 'standby-only', 'pulses', 'stuck', 'high', 'normal'],
  'read-code': ['none'],
};

/**
 * The shop's table of codes belongs to families that are named, and each code to an outcome that reading it can have.
 * @throws {ModelFault} naming file, field and reason; `loadFaultModel` makes a refusal of it.
 */
export function checkBench(model: FaultModel): void {
  const families = model.bench.families.map((family) => family.id);
  const outcomes = outcomesOf(model, 'read-code');
  for (const list of ['checkpoints', 'beeps'] as const) {
    const seen = new Set<string>();
    model.bench[list].forEach((row, at) => {
      const where = `${list}[${at}]`;
      if (!families.includes(row.family))
        throw new ModelFault('bench.json', `${where}.family`, `no family ${row.family}`);
      if (row.outcome !== null && !outcomes.includes(row.outcome))
        throw new ModelFault('bench.json', `${where}.outcome`, `read-code has no outcome ${row.outcome}`);
      if (!canBeRead(list === 'beeps' ? 'beeps' : 'checkpoint', row.code))
        throw new ModelFault('bench.json', `${where}.code`, `no reading can come to “${row.code}”`);
      const name = `${row.family} ${'phase' in row ? row.phase : ''} ${row.code}`;
      if (seen.has(name)) throw new ModelFault('bench.json', `${where}.code`, `${name.trim()} is there twice`);
      seen.add(name);
    });
  }
}

const outcomesOf = (model: FaultModel, step: string): readonly string[] =>
  knownStep(model, step)?.outcomes.map((outcome) => outcome.id) ?? [];
