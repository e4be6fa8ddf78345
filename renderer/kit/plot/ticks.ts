/** A tick of a rule: long ones are labelled, middle is half, short is a unit. */
export type Tick = { readonly at: number; readonly size: 'long' | 'middle' | 'short'; readonly label?: string };

/** A round step (1, 2 or 5 times a power of ten) that leaves at least `least` px between labelled ticks. */
export function roundStep(from: number, to: number, length: number, least: number): number {
  const raw = ((to - from) * least) / Math.max(1, length);
  const power = 10 ** Math.floor(Math.log10(raw || 1));
  const found = [1, 2, 5, 10].find((factor) => factor * power >= raw) ?? 10;
  return found * power;
}

/** Ticks of an even scale: labelled at round steps, four units between (two halves where a step is twice a power of ten). */
export function evenTicks(
  from: number,
  to: number,
  length: number,
  label: (value: number) => string,
  least = 64,
): readonly Tick[] {
  const step = roundStep(from, to, length, least);
  const parts = Math.round(step / 10 ** Math.floor(Math.log10(step))) === 2 ? 4 : 5;
  const unit = step / parts;
  const ticks: Tick[] = [];
  const first = Math.ceil(from / unit - 1e-9);
  const last = Math.floor(to / unit + 1e-9);
  for (let i = first; i <= last; i += 1) {
    const at = Number((i * unit).toPrecision(12));
    if (i % parts === 0) ticks.push({ at, size: 'long', label: label(at) });
    else ticks.push({ at, size: parts === 4 && i % 2 === 0 ? 'middle' : 'short' });
  }
  return ticks;
}
