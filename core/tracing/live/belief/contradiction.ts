import { prng } from '../../../figures/prng.ts';
import { at, nth } from '../../../figures/rows.ts';
import type { Contradiction, FaultModel, TracingCase } from '../types.ts';
import type { Condition } from './condition.ts';
import { carry } from './filter.ts';
import type { Hypothesis } from './hypotheses.ts';
import { findingsInPlace, inPlace } from './inPlace.ts';
import { outlook } from './outlook.ts';
import { massOf, type Posterior } from './posterior.ts';
import { FIRST, PRESENCES, SECOND } from './presence.ts';

/** A log rarer than this under its own best explanation is reported: too rare to be put down to chance. Common practice, no source. */
const CONTRADICTS = 1 / 1000;
/** So many logs are simulated: a tail of 1 in 1,000 is then known to ± 0.0005 (one standard error, √(p ÷ n)). */
const SIMULATED = 4000;
/** Any number: the same log is always judged in the same way. */
const SEED = 20_261_013;
/** Simulating pays only for a log this many standard deviations, and this much more, below the mean log chance. */
const FAR_BELOW = { deviations: 2, more: 1 };
/** Sums that differ by less are equal but for rounding. */
const ROUNDING = 1e-9;

/**
 * Does the log contradict itself? Logs of the same steps are simulated from the best hypothesis; when no more than one
 * in a thousand is as unlikely as the real one, the two entries are named whose removal makes the best explanation likeliest. `tail`: share of
 * simulated logs no likelier than the real one, 0..1, a Monte Carlo p-value (m + 1) ÷ (n + 1) (Davison and Hinkley, Bootstrap
 * Methods, 1997, section 4.2, from memory). Null: it does not, or has fewer than two entries that say anything.
 */
export function contradictionOf(model: FaultModel, tracing: TracingCase, posterior: Posterior): Contradiction | null {
  if (posterior.conditions.length < 2) return null;
  const best = bestOf(posterior);
  if (!best) return null;
  const rows = posterior.conditions.map((condition) => outcomeRow(model, posterior, condition, best));
  const actual = rows.reduce((sum, row, k) => sum + Math.log(row[nth(posterior.conditions, k).outcome] ?? 0), 0);
  if (!isOdd(rows, actual)) return null;
  const tail = tailOf(rows, actual);
  if (tail > CONTRADICTS) return null;
  return { tail, entries: mostTelling(posterior, tracing) };
}

function bestOf(posterior: Posterior): Hypothesis | undefined {
  let best = -1;
  let most = 0;
  for (let h = 0; h < posterior.hypotheses.length; h++) {
    const mass = massOf(posterior, h);
    if (mass > most) [best, most] = [h, mass];
  }
  return posterior.hypotheses[best];
}

/** P(each outcome) of one logged step under a hypothesis that still stands, given what was before it. */
function outcomeRow(model: FaultModel, posterior: Posterior, condition: Condition, best: Hypothesis): Float64Array {
  const { step, finding } = condition;
  const outcomes =
    finding === null
      ? inPlace(model, posterior.prior, step, condition)
      : (findingsInPlace(model, posterior.prior, step, condition)[finding] ?? []);
  const row = Float64Array.from(outcomes, (each) => outlook(best, best.second >= 0 ? FIRST | SECOND : FIRST, each));
  const sum = row.reduce((a, b) => a + b, 0);
  return row.map((p) => p / sum);
}

/** Cheap look before simulating: far below the mean log chance, by its own spread? */
function isOdd(rows: readonly Float64Array[], actual: number): boolean {
  let mean = 0;
  let variance = 0;
  for (const row of rows) {
    let m = 0;
    let q = 0;
    for (const p of row) {
      if (p <= 0) continue;
      m += p * Math.log(p);
      q += p * Math.log(p) ** 2;
    }
    mean += m;
    variance += q - m * m;
  }
  return actual < mean - FAR_BELOW.deviations * Math.sqrt(variance) - FAR_BELOW.more;
}

function tailOf(rows: readonly Float64Array[], actual: number): number {
  const chance = prng(SEED);
  let asOdd = 0;
  for (let n = 0; n < SIMULATED; n++) {
    let sum = 0;
    for (const row of rows) {
      let u = chance.next();
      let o = 0;
      while (o < row.length - 1 && u >= at(row, o)) {
        u -= at(row, o);
        o += 1;
      }
      sum += Math.log(at(row, o));
    }
    if (sum <= actual + ROUNDING) asOdd += 1;
  }
  return (asOdd + 1) / (SIMULATED + 1);
}

/** The two entries whose removal raises the likelihood of the rest most, each by itself. */
function mostTelling(posterior: Posterior, tracing: TracingCase): Contradiction['entries'] {
  const without = [...new Set(posterior.entries)].map((entry) => {
    const rest = posterior.conditions.filter((_, at) => posterior.entries[at] !== entry);
    return { entry: entry.entry, log: likelihood(posterior, rest) };
  });
  const [first, second] = [...without].sort((a, b) => b.log - a.log);
  const unknown = tracing.log[0]?.entry ?? '';
  return [first?.entry ?? unknown, second?.entry ?? unknown];
}

function likelihood(posterior: Posterior, conditions: readonly Condition[]): number {
  const into = new Float64Array(PRESENCES);
  return Math.log(
    posterior.hypotheses.reduce(
      (sum, hypothesis) => sum + hypothesis.prior * carry(hypothesis, conditions, 0, into).reduce((a, b) => a + b, 0),
      0,
    ),
  );
}
