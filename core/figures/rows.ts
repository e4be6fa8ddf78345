/**
 * A number of a row. Outside of it: not a number, which no sum hides. The few loops in which most of the time is spent
 * write `row[place] ?? NaN` themselves: a call there costs a tenth of a look ahead.
 */
export const at = (row: Float64Array, place: number): number => row[place] ?? Number.NaN;

/** A whole number of a row; outside of it: not a number. One function for each kind of row: for two kinds it takes longer. */
export const wholeAt = (row: Int32Array, place: number): number => row[place] ?? Number.NaN;

/** A small whole number of a row; outside of it: not a number. */
export const smallAt = (row: Uint8Array, place: number): number => row[place] ?? Number.NaN;

/**
 * An entry of a list that must be there.
 * @throws {RangeError} where it is not: a defect.
 */
export function nth<T>(list: ArrayLike<T>, place: number): T {
  const entry = list[place];
  if (entry === undefined) throw new RangeError(`no entry ${place} of ${list.length}`);
  return entry;
}

/** Σ aᵢ·bᵢ over the length of `a`. */
export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += at(a, i) * at(b, i);
  return sum;
}

/** Σ aᵢ. */
export function sumOf(a: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += at(a, i);
  return sum;
}

/** Adds to one number of a row. */
export function addAt(row: Float64Array, place: number, more: number): void {
  row[place] = at(row, place) + more;
}

/** into ← a·b, number by number; answers Σ of it. */
export function productInto(into: Float64Array, a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) {
    const product = at(a, i) * at(b, i);
    into[i] = product;
    sum += product;
  }
  return sum;
}

/** row ← row ÷ by, number by number. */
export function divideBy(row: Float64Array, by: number): void {
  for (let i = 0; i < row.length; i++) row[i] = at(row, i) / by;
}
