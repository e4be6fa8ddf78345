import type { ClosedFacts } from '../../core/job/bench/closedFacts.ts';
import type { TimedWork } from '../../core/job/work.ts';
import { type EpochMs, epochMs, MINUTE_MS, minutes } from '../../core/time.ts';

type More = Partial<Omit<TimedWork, 'what' | 'startedAt' | 'endedAt' | 'handsOn'>>;

/**
 * A piece of work as it is kept, beside the one before it: what it was, how long after that one's end it began, how much longer
 * it ran than its minutes say (null: it has no end), both in milliseconds, hands-on minutes, and what is not as usual.
 */
type KeptWork = readonly [what: string, after: number, over: number | null, handsOn: number, more?: More];

/** What a piece of work has unless something else is said of it: its kind and who did it are those of the one before. */
const usual = (before: TimedWork | undefined) => ({
  kind: before?.kind ?? 'step',
  by: before?.by ?? '',
  waiting: minutes(0),
  passed: null,
  struck: null,
});

const endOf = (before: TimedWork | undefined): EpochMs => before?.endedAt ?? before?.startedAt ?? epochMs(0);

/** What is learnt from a closed job, in as few letters as can be: a shop keeps one of them for every job it ever did. */
export function factsText(facts: ClosedFacts): string {
  return JSON.stringify({ ...facts, work: facts.work.map((work, at) => keptWork(work, facts.work[at - 1])) });
}

/** What `factsText` made, as it was; fields that were undefined are left out. */
export function factsFrom(text: string): ClosedFacts {
  const kept: Omit<ClosedFacts, 'work'> & { readonly work: readonly KeptWork[] } = JSON.parse(text);
  const work: TimedWork[] = [];
  for (const one of kept.work) work.push(workFrom(one, work.at(-1)));
  return { ...kept, work };
}

function keptWork(work: TimedWork, before: TimedWork | undefined): KeptWork {
  const { what, startedAt, endedAt, handsOn, ...rest } = work;
  const expected = new Map<string, unknown>(Object.entries(usual(before)));
  const unusual = Object.entries(rest).filter(([name, value]) => value !== undefined && expected.get(name) !== value);
  const over = endedAt === null ? null : endedAt - startedAt - (handsOn + rest.waiting) * MINUTE_MS;
  const short = [what, startedAt - endOf(before), over, handsOn] as const;
  return unusual.length === 0 ? short : [...short, Object.fromEntries(unusual)];
}

function workFrom([what, after, over, handsOn, more = {}]: KeptWork, before: TimedWork | undefined): TimedWork {
  const startedAt = epochMs(endOf(before) + after);
  const rest = { ...usual(before), ...more };
  const endedAt = over === null ? null : epochMs(startedAt + (handsOn + rest.waiting) * MINUTE_MS + over);
  return { ...rest, what, startedAt, endedAt, handsOn: minutes(handsOn) };
}
