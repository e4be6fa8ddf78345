import type { Part } from '../../custody/ledger.ts';
import type { PartRowFacts } from '../../papers/builders/returnReportFacts.ts';
import { slotBefore, stateOf } from '../kinds/tagPapers.ts';
import type { Making } from '../making.ts';
import { partInText, partName, placeWords, slotWords, upperFirst } from '../worded.ts';
import { isAsItCame } from './billed.ts';

/** Where every part came in and goes home: one row for each that left its place, one for all that never did. */
export function partRows(making: Making): readonly PartRowFacts[] {
  const parts = concerned(making);
  const stayed = parts.filter((part) => part.belongs.to === 'owner' && hasStayed(making, part));
  const left = parts.filter((part) => !stayed.includes(part));
  return [...left.map((part) => row(making, part)), ...together(making, stayed), ...along(making), ...loaners(making)];
}

/** The owner's parts, and those of ours that go home in the machine. */
const concerned = ({ view, job }: Making): readonly Part[] =>
  [...new Set([...Object.values(view.machine.atTakingIn), ...view.machine.parts, ...job.parts])]
    .flatMap((id) => view.parts.get(id) ?? [])
    .filter((part) => part.belongs.to === 'owner' || part.title?.as === 'lent');

const inThisMachine = ({ view }: Making, part: Part): string | null =>
  part.place.at === 'slot' && part.place.machine === view.machine.id ? part.place.slot : null;

const hasStayed = (making: Making, part: Part): boolean =>
  part.tag === null && slotBefore(making, part) !== null && inThisMachine(making, part) === slotBefore(making, part);

function row(making: Making, part: Part): PartRowFacts {
  const { words, job } = making;
  const came = slotBefore(making, part);
  const state = stateOf(job, part);
  return {
    what: partName(making, part),
    ...(part.tag && { tag: part.tag }),
    mark: { whose: isOurs(making, part) ? 'shop' : 'owner', ...(state && { state }) },
    whose: whoseWords(making, part),
    came: came === null ? words.facts.places.ours : slotWords(making, came, part),
    goes: placeWords(making, part),
  };
}

/** Bought from us in this job, or lent: ours when the machine came. */
const isOurs = ({ job }: Making, part: Part): boolean =>
  part.belongs.to === 'shop' || job.agreedLines.some((line) => line.part === part.id);

function whoseWords(making: Making, part: Part): string {
  const { whose } = making.words.facts;
  if (part.title?.as === 'lent') return whose.lent;
  if (isOurs(making, part)) return whose.sold;
  const state = stateOf(making.job, part);
  return state === 'dead' ? whose.failed : state === 'named' ? whose.named : whose.yours;
}

function together(making: Making, parts: readonly Part[]): readonly PartRowFacts[] {
  const { words, format } = making;
  if (parts.length === 0) return [];
  const counted = new Map<string, number>();
  for (const part of parts) {
    const name = partInText(making, part);
    counted.set(name, (counted.get(name) ?? 0) + 1);
  }
  const { common } = making.setting.words;
  const names = [...counted].map(([what, n]) => (n === 1 ? what : format.say(common.counted, { n, what })));
  return [rowOfTheirs(making, names, words.facts.places.inIt)];
}

/** What came along and is no part. */
function along(making: Making): readonly PartRowFacts[] {
  const { job, words, format, setting } = making;
  if (job.cameAlong.length === 0) return [];
  const things = job.cameAlong.map(({ thing, count }) =>
    count === 1 ? thing : format.say(setting.words.common.counted, { n: count, what: thing }),
  );
  return [rowOfTheirs(making, things, words.facts.places.withIt)];
}

/** Things of theirs in one row, which went home as they came. */
const rowOfTheirs = ({ words, format }: Making, names: readonly string[], place: string): PartRowFacts => ({
  what: upperFirst(format.list(names)),
  mark: { whose: 'owner' },
  whose: words.facts.whose.yours,
  came: place,
  goes: place,
});

/** Parts of ours that were in it for trial, and are out again. */
function loaners(making: Making): readonly PartRowFacts[] {
  const { view, job, words, format } = making;
  const used = new Set(job.work.filter((work) => !work.struck).flatMap((work) => work.loaners.map(({ id }) => id)));
  const parts = [...used]
    .flatMap((id) => view.parts.get(id) ?? [])
    .filter((part) => part.belongs.to === 'shop' && part.title === null);
  if (parts.length === 0) return [];
  const { places, whose } = words.facts;
  const names = format.list(parts.map((part) => partInText(making, part)));
  return [
    {
      what: format.say(words.facts.loaners, { parts: names }),
      mark: { whose: 'shop' },
      whose: whose.ours,
      came: places.ours,
      goes: places.bin,
    },
  ];
}

/** The owner's parts that go home in another slot than they came in. */
const moved = (making: Making) =>
  concerned(making).flatMap((part) => {
    const [was, now] = [slotBefore(making, part), inThisMachine(making, part)];
    return part.belongs.to === 'owner' && was !== null && now !== null && was !== now ? [{ part, was, now }] : [];
  });

/** Does a part of theirs sit in another slot than it came in? */
export const isMoved = (making: Making): boolean => moved(making).length > 0;

/** That a part sits elsewhere than it came, and where it has to because the board is another one. */
export function movedWords(making: Making): readonly string[] {
  const { job, words, format, view } = making;
  const otherBoard =
    !isAsItCame(making) && job.agreedLines.some(({ part }) => part !== null && view.parts.get(part)?.kind === 'board');
  return moved(making).map(({ part, was, now }) =>
    format.say(otherBoard && part.kind === 'dimm' ? words.facts.onlyThese : words.facts.movedSlot, {
      part: partName(making, part),
      was: slotWords(making, was, part),
      now: slotWords(making, now, part),
    }),
  );
}
