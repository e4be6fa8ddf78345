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
  Assembly: PLANNER,
  AssemblyState: PLANNER,
  Belief: PLANNER,
  Figures: COMPONENT,
  Machine: CASES,
  Method: PLANNER,
  OrderRow: COMPONENT,
  PartMark: COMPONENT,
  QrCode: COMPONENT,
  Ready: PLANNER,
  Step: PLANNER,
  ToldSeen: COMPONENT,
  estimate: 'the builder of a paper bears the name of its kind',
  faultName: ON_PAPER,
  goOn: COMMAND_LINE,
  judge: 'a command bears the name it is asked by, beside what judges a case',
  massOf: PLANNER,
  openShop: 'a command bears the name it is asked by, beside opening the folder',
  papers: COMMAND_LINE,
  placeWords: ON_PAPER,
  say: 'the filler of texts, beside the set-up’s, which runs before there are packages',
  tags: COMMAND_LINE,
  workName: ON_PAPER,
};

/** Names that a whole folder gives, one for each of its files, each with its reason. */
export const STANDS_IN_EACH: Readonly<Record<string, string>> = {
  /** Every migration has one. */
  up: 'db/migrations/',
};

/**
 * Exported names that stand for two things without a reason, or for three with one, and reasons that nothing needs. A
 * reason is one for two files; a name of a folder's is one wherever it stands in there.
 */
export function namesWithoutReason(
  sources: readonly Source[],
  reasons: Readonly<Record<string, string>> = STANDS_TWICE,
  folders: Readonly<Record<string, string>> = STANDS_IN_EACH,
): readonly Finding[] {
  const twice = [...declaredTwice(sources)].filter(
    ([name, files]) => !files.every((file) => Object.hasOwn(folders, name) && file.startsWith(folders[name] ?? '')),
  );
  return [
    ...twice
      .filter(([name, files]) => !Object.hasOwn(reasons, name) || files.length > 2)
      .map(([name, files]) => `${name} stands in ${files.join(' and ')}: one name, one thing`),
    ...Object.keys(reasons)
      .filter((name) => !twice.some(([one]) => one === name))
      .map((name) => `${name} stands once: its reason is left over`),
  ];
}
