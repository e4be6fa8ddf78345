import words from '../../assets/words/en/plan.json' with { type: 'json' };
import { isOneOf, keyOf, keysOf } from '../../core/table.ts';
import { say } from '../../core/text/say.ts';
import { type LoggedOutcomes, nextStep } from '../../core/tracing/plan/nextStep.ts';
import { parseLog } from '../../core/tracing/plan/parseLog.ts';
import { planProblem } from '../../core/tracing/plan/planProblem.ts';
import { parseProblem } from '../../core/tracing/plan/problem/parseProblem.ts';
import type { PlanRefusal } from '../../core/tracing/plan/problem/planRefusal.ts';
import type { TracingProblem } from '../../core/tracing/plan/problem/problem.ts';
import type { CliCommand, Io } from './command.ts';
import { type PlanArguments, readArguments } from './planArguments.ts';
import { planText } from './planText.ts';

/** Its words, as those of the planner's refusals, stand with the words of this command. */
const CANNOT_READ = 'cannot-read';
const ANSWERED = 0;
/** A stated limit stopped a plan. */
const LIMIT = 1;
/** A file or an option is bad. */
const BAD = 2;

/** `knowngood plan`: answers tracing problems in the exchange form, file by file; a bad file stops no other. */
export const plan: CliCommand = {
  name: 'plan',
  help: Object.values(words.help).join('\n'),

  run: async (args, asked) => {
    const io = onOneLine(asked);
    const read = readArguments(args);
    if ('says' in read) {
      io.err(read.says);
      io.err(words.help.usage);
      return BAD;
    }
    const log = read.next === undefined ? undefined : await readLogFile(read.next, io);
    if (log && !log.ok) {
      tell(log.refusal, read.next ?? '', io);
      return BAD;
    }
    let worst = ANSWERED;
    for (const file of read.files) {
      const code = await answer(file, read, log?.log, io);
      worst = Math.max(worst, code);
    }
    return worst;
  },
};

/** What a file says must neither break a line nor steer the terminal: its control characters are printed as spaces. */
function onOneLine(io: Io): Io {
  const clean = (line: string) => line.replaceAll(/\p{Cc}+/gu, ' ');
  return { ...io, out: (line) => io.out(clean(line)), err: (line) => io.err(clean(line)) };
}

async function answer(file: string, options: PlanArguments, log: LoggedOutcomes | undefined, io: Io): Promise<number> {
  const text = await readText(file, io);
  if (!text.ok) return refuseFile(text.refusal, file, options, io, BAD);
  const parsed = parseProblem(text.value, file);
  if (!parsed.ok) return refuseFile(parsed.refusal, file, options, io, BAD);
  return log ? answerNext(file, parsed.problem, log, options, io) : answerPlan(file, parsed.problem, options, io);
}

function answerPlan(file: string, problem: TracingProblem, options: PlanArguments, io: Io): number {
  const answered = planProblem(problem, { method: options.method, cut: options.cut });
  if (!answered.ok) return refuseFile(answered.refusal, file, options, io, LIMIT);
  if (options.json) io.out(JSON.stringify(answered.plan));
  else for (const line of planText(file, answered.plan)) io.out(line);
  return ANSWERED;
}

function answerNext(
  file: string,
  problem: TracingProblem,
  log: LoggedOutcomes,
  options: PlanArguments,
  io: Io,
): number {
  const answered = nextStep(problem, log, options.method);
  if (!answered.ok) {
    return refuseFile(answered.refusal, file, options, io, 'entry' in answered.refusal ? BAD : LIMIT);
  }
  const { next, kind } = answered.next;
  if (options.json) io.out(JSON.stringify({ method: options.method, next }));
  else io.out(say(words.next[kind === 'hand over' ? 'hand-over' : kind], { file, step: next }));
  return ANSWERED;
}

/** The message for people goes to the error side; with --json the file keeps its line. */
function refuseFile(refusal: PlanRefusal, file: string, options: PlanArguments, io: Io, code: number): number {
  tell(refusal, file, io);
  if (options.json) io.out(JSON.stringify({ ...refusal, file }));
  return code;
}

function tell(refusal: PlanRefusal, file: string, io: Io): void {
  const template = words.says[keyOf(words.says, refusal.refused)];
  const counted = isOneOf(keysOf(words.counted), refusal.counted) ? words.counted[refusal.counted] : undefined;
  const facts = Object.fromEntries(Object.entries(refusal).map(([name, fact]) => [name, String(fact)]));
  const says = say(template, { ...facts, counted: counted ?? '' });
  const field = fieldOf(refusal);
  io.err(field === undefined ? say(words.refused, { file, says }) : say(words['bad-file'], { file, field, says }));
}

/** A bad entry of the log is named by its place in the log. */
function fieldOf(refusal: PlanRefusal): string | undefined {
  if (typeof refusal.field === 'string') return refusal.field;
  return typeof refusal.entry === 'number' ? `--next [${refusal.entry}]` : undefined;
}

type Text = { readonly ok: true; readonly value: string } | { readonly ok: false; readonly refusal: PlanRefusal };

async function readText(file: string, io: Io): Promise<Text> {
  try {
    return { ok: true, value: new TextDecoder().decode(await io.readFile(file)) };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return { ok: false, refusal: { refused: CANNOT_READ, file, field: '(file)', reason } };
  }
}

async function readLogFile(file: string, io: Io): Promise<ReturnType<typeof parseLog>> {
  const text = await readText(file, io);
  return text.ok ? parseLog(text.value, file) : { ok: false, refusal: { ...text.refusal, file, field: '(file)' } };
}
