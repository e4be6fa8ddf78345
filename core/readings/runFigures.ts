/** What a memory pass or a load run came to, as typed or pasted. `null` is "not said". */
export type RunFigures = {
  readonly run: 'memory-pass' | 'load-run';
  readonly minutes: number | null;
  readonly passes: number | null;
  readonly errors: number | null;
  /** Hottest during the run, °C, and the limit that was typed with it. */
  readonly celsius: number | null;
  readonly limitCelsius: number | null;
};

const RUNS: readonly (readonly [RunFigures['run'], RegExp])[] = [
  ['memory-pass', /\bmem(?:ory)?\b|\bpass(?:es)?\b/i],
  ['load-run', /\bload\b|\bstress\b/i],
];

/**
 * Figures of runs, one run a line (`memory: 0 errors in 3 h 45 min, 2 passes`) or pasted over several lines
 * (`Time: 3:45:10` / `Errors: 0` / `Pass: 2`). Lines that begin no run add to the one before. What is not said stays open.
 */
export function readRunFigures(text: string): readonly RunFigures[] {
  const runs: { run: RunFigures['run']; lines: string[] }[] = [];
  for (const line of text.slice(0, LONGEST).split(/\r\n|\r|\n/)) {
    const open = runs.at(-1);
    const run = RUNS.find(([, sign]) => sign.test(line))?.[0];
    if (run && run !== open?.run) runs.push({ run, lines: [line] });
    else open?.lines.push(line);
  }
  return runs.map(({ run, lines }) => figuresOf(run, lines.join('\n')));
}

/** Figures are a handful of lines; the rest of a longer text is none. */
const LONGEST = 20_000;

function figuresOf(run: RunFigures['run'], text: string): RunFigures {
  const counted = (name: string): number | null => {
    const read =
      new RegExp(`\\b(\\d{1,9})[ \\t]*(?:${name})\\b`, 'i').exec(text) ??
      new RegExp(`\\b(?:${name})[ \\t]*[:=]?[ \\t]*(\\d{1,9})\\b`, 'i').exec(text);
    return read?.[1] === undefined ? null : Number(read[1]);
  };
  const limit = /\blimit\s*[:=]?\s*(\d{1,3})/i.exec(text);
  const hottest = /(?<!limit\s{0,3}[:=]?\s{0,3})\b(\d{1,3})\s*°\s*C/i.exec(text);
  return {
    run,
    minutes: minutesIn(text),
    passes: counted('pass(?:es)?'),
    errors: /\bno errors\b/i.test(text) ? 0 : counted('errors?'),
    celsius: hottest ? Number(hottest[1]) : null,
    limitCelsius: limit ? Number(limit[1]) : null,
  };
}

/** `3 h 45 min`, `225 min`, `3:45:10` in whole minutes. */
function minutesIn(text: string): number | null {
  const clock = /\b(\d{1,4}):(\d{2}):\d{2}\b/.exec(text);
  if (clock) return Number(clock[1]) * 60 + Number(clock[2]);
  const hours = /\b(\d{1,4})\s*h(?:ours?)?\b/i.exec(text)?.[1];
  const minutes = /\b(\d{1,5})\s*min(?:utes)?\b/i.exec(text)?.[1];
  return hours === undefined && minutes === undefined ? null : Number(hours ?? 0) * 60 + Number(minutes ?? 0);
}
