/** Turns a body of one version into the next version's shape. Runs when read; what is stored and hashed stays. */
export type Lift = (body: unknown) => unknown;

/** Lifts by kind and by the version they start from. A kind whose body changes is registered here. */
export type Lifts = { readonly [kind: string]: { readonly [fromVersion: number]: Lift } };

export const LIFTS: Lifts = {};

/** A body in its newest shape, with that shape's version. */
export function lift(
  kind: string,
  v: number,
  body: unknown,
  lifts: Lifts = LIFTS,
): { readonly v: number; readonly body: unknown } {
  let newest = { v, body };
  for (let next = lifts[kind]?.[v]; next; next = lifts[kind]?.[newest.v])
    newest = { v: newest.v + 1, body: next(newest.body) };
  return newest;
}
