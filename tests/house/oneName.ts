import { declaredTwice } from './figures/declaredTwice.ts';
import type { Finding, Source } from './source.ts';

const PLANNER = 'the general planner’s, which knows no fault model, beside the engine’s over one';
const CASES = 'bench cases’ own, which are read apart from the shop';
const COMPONENT = 'a component and the type of what it shows';
const ON_PAPER = 'in the words of papers, which have their own language, and in those of screens';
const COMMAND_LINE = 'a command of the command line bears the name of what it is about';

/** Exported names that rightly stand for two things, each with its reason. */
export const STANDS_TWICE: Readonly<Record<string, string>> = {
  Answer: CASES,
  AnswerHow: CASES,
  Ask: CASES,
  Assembly: PLANNER,
  AssemblyState: PLANNER,
  Belief: PLANNER,
  Figures: COMPONENT,
  Log: PLANNER,
  Machine: CASES,
  Method: PLANNER,
  Move: PLANNER,
  NewPart: 'the form for a part of ours, beside what part of theirs is new',
  OrderRow: COMPONENT,
  PartMark: COMPONENT,
  Place: 'where a part is, beside where in a machine a step looks',
  Problem: PLANNER,
  QrCode: COMPONENT,
  Ready: PLANNER,
  Sheet: 'a page of paper, beside the sheet of a screen that is laid out as one',
  Shop: 'what the journal tells of the shop, beside the shop that is opened from a folder',
  Step: PLANNER,
  ToldSeen: COMPONENT,
  Tools: 'the tools of the bench, as a component, beside what the service works with',
  estimate: 'the builder of a paper bears the name of its kind',
  faultName: ON_PAPER,
  goOn: COMMAND_LINE,
  judge: 'a command bears the name it is asked by, beside what judges a case',
  keyOf: PLANNER,
  massOf: PLANNER,
  openShop: 'a command bears the name it is asked by, beside opening the folder',
  papers: COMMAND_LINE,
  placeWords: ON_PAPER,
  say: 'the filler of texts, beside the set-up’s, which runs before there are packages',
  tags: COMMAND_LINE,
  up: 'every migration has one',
  workName: ON_PAPER,
};

/** Exported names that stand for two things without a reason, and reasons that nothing needs. */
export function namesWithoutReason(
  sources: readonly Source[],
  reasons: Readonly<Record<string, string>> = STANDS_TWICE,
): readonly Finding[] {
  const twice = declaredTwice(sources);
  return [
    ...[...twice]
      .filter(([name]) => !Object.hasOwn(reasons, name))
      .map(([name, files]) => `${name} stands in ${files.join(' and ')}: one name, one thing`),
    ...Object.keys(reasons)
      .filter((name) => !twice.has(name))
      .map((name) => `${name} stands once: its reason is left over`),
  ];
}
