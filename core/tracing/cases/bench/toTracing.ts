import { WATCH_START } from '../../live/model/special.ts';
import type { FaultModel, Loaner, TracingCase } from '../../live/types.ts';
import type { CaseLine } from '../form/caseLine.ts';

import { afterEntry, type BadEntry } from './logged.ts';
import { machineOf } from './machine.ts';
import { USUAL } from './usual.ts';

export type Bench = {
  readonly tracing: TracingCase;
  /** Terms, histories and machine facts that were given and say nothing to the engine. */
  readonly ignored: readonly string[];
};
export type BadLine = BadEntry | { readonly is: 'not-a-case'; readonly at: string };

/** Minor units of one whole unit of money: the cases' money has no currency. */
const MINOR = 100;

/** A case line as the engine takes it. What was seen counts once the first start is logged. */
export function toTracing(model: FaultModel, line: CaseLine): Bench | BadLine {
  const machine = machineOf(line.machine);
  if ('wrong' in machine) return { is: 'not-a-case', at: `machine.${machine.wrong}` };
  const started = line.before.some((entry) => entry.split(':')[0] === WATCH_START);
  const seen = started ? line.seen : [];
  const { told } = line;
  const start: TracingCase = {
    told: {
      symptoms: told.symptoms,
      changed: told.changed,
      often: told.often,
      onlyWhen: told.onlyWhen,
      rate: told.rate,
    },
    hunch: null,
    seen,
    switches: machine.switches,
    machine: machine.facts,
    log: [],
    stock: wallOf(line.wall),
    agreed: line.agreed ?? USUAL.agreed,
    signatures: 'in-the-log',
    passedGates: [],
    money: moneyOf(line.money),
    untilClosing: null,
    delay: { dayMinutes: USUAL.dayMinutes, daysLeft: null },
  };
  let tracing = start;
  for (const entry of line.before) {
    const next = afterEntry(model, tracing, entry);
    if ('is' in next) return next;
    tracing = next;
  }
  return { tracing, ignored: [...unknownWords(model, tracing), ...machine.ignored.map((fact) => `machine.${fact}`)] };
}

function unknownWords(model: FaultModel, { told, seen }: TracingCase): readonly string[] {
  const terms = new Set(model.symptoms.map(({ id }) => id));
  const histories = new Set([...model.evidence, ...model.often].map(({ id }) => id));
  return [
    ...[...told.symptoms, ...seen].filter((id) => !terms.has(id)),
    ...[...told.changed, ...told.often, ...told.onlyWhen].filter((id) => !histories.has(id)),
  ];
}

function wallOf(wall: CaseLine['wall']): readonly Loaner[] {
  const lacks = wall === 'full' ? [] : wall.lacks;
  return USUAL.wall
    .filter(({ id, kind }) => !lacks.includes(id) && !lacks.includes(kind))
    .map(({ id, kind, standing }) => ({
      id,
      kind,
      standing,
      valueMinor: null,
      proveMinutes: USUAL.proveMinutes,
      wantedBy: 0,
      fits: 'yes',
      taken: false,
    }));
}

const moneyOf = ({ limit = USUAL.money.limit, worth = null }: CaseLine['money']): TracingCase['money'] => ({
  perMinuteMinor: USUAL.money.perMinute * MINOR,
  limitMinor: limit === null ? null : limit * MINOR,
  spentMinor: 0,
  worthMinor: worth === null ? null : worth * MINOR,
});
