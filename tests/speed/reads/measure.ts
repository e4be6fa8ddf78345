import { performance } from 'node:perf_hooks';

/** What asking once again and again came to, milliseconds. */
export type Asked = { readonly name: string; readonly first: number; readonly p50: number; readonly p95: number };

/** Asks once, and then a few times more; each until its answer is there. */
export async function asked(name: string, times: number, ask: () => Promise<unknown>): Promise<Asked> {
  const took = async () => {
    const start = performance.now();
    await ask();
    return performance.now() - start;
  };
  const first = await took();
  const again: number[] = [];
  for (let n = 0; n < times; n++) again.push(await took());
  const sorted = again.toSorted((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? first;
  return { name, first, p50: at(0.5), p95: at(0.95) };
}

export const row = ({ name, first, p50, p95 }: Asked): string =>
  `${name.padEnd(34)} ${[first, p50, p95].map((ms) => ms.toFixed(1).padStart(10)).join('')}`;
