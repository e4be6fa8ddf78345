import { type Condition, STICKY } from './condition.ts';

/**
 * P(outcome | what shows at once). One fault: its own row. Several: the machine is normal only if none of them shows
 * (chances of the normal outcome multiply, each against a sound machine's), and what is not normal is shared among the
 * other outcomes as each fault would show them. Kept as running sums so that no list is built.
 */
export type Showing = { count: number; normal: number; seen: number; odd: number; steady: boolean };

export const showNothing = (into: Showing): Showing => {
  into.count = 0;
  into.normal = 1;
  into.seen = 0;
  into.odd = 0;
  into.steady = true;
  return into;
};

/** Adds a fault that shows with these chances of the normal and the asked outcome. */
export function show(into: Showing, condition: Condition, normal: number, seen: number, steady: boolean): void {
  into.normal *= into.count === 0 ? normal : condition.nothingNormal > 0 ? normal / condition.nothingNormal : 0;
  into.seen += seen;
  into.odd += 1 - normal;
  into.count += 1;
  into.steady &&= steady;
}

/** Shows the same at every repeat: what is steady, or was found last by what is so whether it shows or not. */
export const isSteady = ({ held }: Condition, fault: number, mode: 0 | 1): boolean => mode === 0 || held[fault] === 1;

/** Nothing shows because something was mended since: a repeat is then a look at another machine. */
export function mendedSince(into: Showing): void {
  if (into.count === 0) into.steady = false;
}

/** The chance itself, a repeat in the same configuration counted as hardly anything new for what is steady. */
export function chanceOf(condition: Condition, shown: Showing): number {
  const fresh = freshChance(condition, shown);
  if (condition.again === 'first' || !shown.steady) return fresh;
  return (condition.again === 'same' ? STICKY : 0) + (1 - STICKY) * fresh;
}

function freshChance(condition: Condition, shown: Showing): number {
  if (shown.count === 0) return condition.nothingSeen;
  if (shown.count === 1) return shown.seen;
  const normal = Math.min(1, shown.normal);
  if (condition.isNormal) return normal;
  return shown.odd > 0 ? ((1 - normal) * shown.seen) / shown.odd : 0;
}
