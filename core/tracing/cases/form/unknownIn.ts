import { CONSENTS } from '../../../approval/consent.ts';
import { DAYS_AWAY } from '../../../approval/question.ts';
import { WATCH_START } from '../../live/model/special.ts';
import type { FaultModel } from '../../live/types.ts';
import { outcomesNamed, stepIds, stepNamed } from '../ids/names.ts';
import { near } from '../ids/near.ts';
import { STEPS_TO_COME } from '../ids/stepsToCome.ts';
import { ANY_PART, KINDS } from '../kinds/kindNames.ts';
import type { BenchCase, Either } from './benchCase.ts';

type Path = readonly (string | number)[];
type Unknown = { readonly path: Path; readonly id: string; readonly near: readonly string[] };

/** The first id of a case that neither the model nor the steps to come know, and what is near it; null when all are known. */
export function unknownIn(bench: BenchCase, model: FaultModel): Unknown | null {
  const known = new Known(model);
  const { told, seen, answers, truth } = bench;
  const terms = (path: Path, ids: readonly string[]) => known.all(path, ids, (id) => known.term(id));
  const histories = (path: Path, ids: readonly string[]) => known.all(path, ids, (id) => known.history(id));
  return (
    terms(['told', 'symptoms'], told.symptoms) ??
    terms(['seen'], seen) ??
    histories(['told', 'changed'], told.changed) ??
    histories(['told', 'often'], told.often) ??
    histories(['told', 'onlyWhen'], told.onlyWhen) ??
    known.outcome(['firstStart'], WATCH_START, bench.firstStart) ??
    known.all(['agreed'], bench.agreed ?? [], (id) => known.consent(id)) ??
    known.all(['before'], bench.before, (entry) => known.logged(entry)) ??
    known.all(['truth', 'faults'], truth.faults, (one) => known.truth(one)) ??
    answersIn(known, answers) ??
    neversIn(known, bench) ??
    pointsIn(known, bench)
  );
}

function answersIn(known: Known, { mended, afterwards, ...answers }: BenchCase['answers']): Unknown | null {
  const each = (path: Path, all: { readonly [step: string]: readonly string[] }) =>
    known.all([], Object.entries(all), ([step, outcomes]) => {
      const inside = known.step(step) ?? first(outcomes, (one) => known.outcome([], step, one));
      return inside && { ...inside, path: [...path, step] };
    });
  return (
    each(['answers'], answers) ??
    each(['answers', 'afterwards'], afterwards ?? {}) ??
    known.either(['answers', 'mended'], mended ?? [], (id) => known.mending(id))
  );
}

const neversIn = (known: Known, { never }: BenchCase): Unknown | null =>
  first([...never.entries()], ([at, one]) => {
    const path = ['never', at];
    const until = (id: string) => (id === 'ever' || id === 'mended' ? null : known.stepOrLogged(id));
    return (
      known.all([...path, 'what'], one.what, (id) => known.kindOrStep(id)) ??
      known.all([...path, 'from'], one.from, (id) => known.stepOrLogged(id)) ??
      known.either([...path, 'until'], one.until, until)
    );
  });

function pointsIn(known: Known, bench: BenchCase): Unknown | null {
  const log = (path: Path, ids: readonly string[]) => known.all(path, ids, (id) => known.stepOrLogged(id));
  return (
    first([...bench.askedFirst.entries()], ([at, { after, oneOf }]) => {
      const path = ['askedFirst', at];
      const next = (id: string) => (ENDS.includes(id) ? null : known.step(id));
      return log([...path, 'after'], after) ?? known.all([...path, 'oneOf'], oneOf, next);
    }) ??
    first([...bench.firstThought.entries()], ([at, { after, oneOf = [], notAbove = {} }]) => {
      const path = ['firstThought', at];
      return (
        log([...path, 'after'], after) ??
        known.all([...path, 'oneOf'], oneOf, (id) => known.fault(id)) ??
        known.all([...path, 'notAbove'], Object.keys(notAbove), (id) => known.fault(id))
      );
    }) ??
    known.all(['end', 'fault'], bench.end.fault, (id) => known.fault(id)) ??
    known.either(['end', 'after'], bench.end.after, (id) => known.stepOrLogged(id))
  );
}

const ENDS: readonly string[] = ['settled', 'hand-over', 'ask-owner'];

const first = <T>(list: readonly T[], find: (one: T) => Unknown | null): Unknown | null => {
  for (const one of list) {
    const found = find(one);
    if (found) return found;
  }
  return null;
};

/** The ids that a case may write. */
class Known {
  readonly #model: FaultModel;

  constructor(model: FaultModel) {
    this.#model = model;
  }

  all<T>(path: Path, list: readonly T[], find: (one: T) => Unknown | null): Unknown | null {
    return first([...list.entries()], ([at, one]) => {
      const found = find(one);
      return found && { ...found, path: found.path.length > 0 ? found.path : [...path, at] };
    });
  }

  either(path: Path, list: Either, find: (id: string) => Unknown | null): Unknown | null {
    return this.all(path, list, (one) => first(typeof one === 'string' ? [one] : one, find));
  }

  #among(id: string, now: string, known: readonly string[]): Unknown | null {
    return known.includes(now) ? null : { path: [], id, near: near(id, known) };
  }

  step(id: string): Unknown | null {
    if (stepNamed(this.#model, id).is !== 'unknown') return null;
    return { path: [], id, near: near(id, stepIds(this.#model)) };
  }

  outcome(path: Path, step: string, outcome: string): Unknown | null {
    if (outcomesNamed(this.#model, step, outcome) !== null) return null;
    const named = stepNamed(this.#model, step);
    const known = named.is === 'here' ? named.step.outcomes.map(({ id }) => id) : (STEPS_TO_COME[step] ?? []);
    return { path, id: `${step}:${outcome}`, near: near(outcome, known) };
  }

  logged(entry: string): Unknown | null {
    const [step = '', outcome = ''] = entry.split(':');
    return this.step(step) ?? this.outcome([], step, outcome);
  }

  stepOrLogged(id: string): Unknown | null {
    return id.includes(':') ? this.logged(id) : this.step(id);
  }

  kindOrStep(id: string): Unknown | null {
    const [kind = ''] = id.split(':');
    if (KINDS.some((one) => one === id) || ANY_PART.some((one) => one === kind)) return null;
    if (stepNamed(this.#model, id).is !== 'unknown') return null;
    return { path: [], id, near: near(id, [...KINDS, ...stepIds(this.#model)]) };
  }

  mending(id: string): Unknown | null {
    return id.startsWith('part:') ? null : this.step(id);
  }

  fault(id: string): Unknown | null {
    return this.#among(
      id,
      id,
      this.#model.faults.map((one) => one.id),
    );
  }

  truth(one: BenchCase['truth']['faults'][number]): Unknown | null {
    if (typeof one === 'string') return this.fault(one);
    return one.like === undefined ? null : this.fault(one.like);
  }

  term(id: string): Unknown | null {
    return this.#among(
      id,
      id,
      this.#model.symptoms.map((one) => one.id),
    );
  }

  history(id: string): Unknown | null {
    const known = [...this.#model.evidence, ...this.#model.often].map((one) => one.id);
    return this.#among(id, id, known);
  }

  consent(id: string): Unknown | null {
    return this.#among(id, id, [...CONSENTS, ...DAYS_AWAY]);
  }
}
