import words from '../../assets/words/en/cli.json' with { type: 'json' };
import { fill } from '../../core/text/wordsFor.ts';
import { answerText } from '../../core/tracing/cases/answer/answerText.ts';
import { planInShort } from '../../core/tracing/cases/answer/planInShort.ts';
import { zCaseLine } from '../../core/tracing/cases/form/caseLine.ts';
import { lineIn } from '../../core/tracing/cases/form/lineIn.ts';
import { fieldOf, jsonOf } from '../../core/tracing/cases/form/readCase.ts';
import { stepIds } from '../../core/tracing/cases/ids/names.ts';
import { near } from '../../core/tracing/cases/ids/near.ts';
import type { FaultModel } from '../../core/tracing/live/types.ts';
import { caseArguments } from './cases/caseArguments.ts';
import { answerLines, refusalLine } from './cases/caseWords.ts';
import { modelFrom } from './cases/modelFrom.ts';
import type { CliCommand, Io } from './command.ts';

const said = words.cases;

/** `knowngood next`: the next step of one bench case, or of every case line on standard input. */
export const next: CliCommand = {
  name: 'next',
  help: said.next,
  run: async (args, io) => {
    const asked = caseArguments(args, said.whichCase);
    if ('wrong' in asked) return wrong(asked.wrong, io);
    const found = await modelFrom(asked.model, io);
    if ('says' in found) return wrong(found.says, io);
    if (asked.path !== '-') return answerFile(found.model, asked.path, asked.json, io);
    if (!asked.json || !io.lines) return wrong(said.linesAsJson, io);
    return answerLinesOf(found.model, io.lines(), io);
  },
};

const wrong = (says: string, io: Io): number => {
  io.err(says);
  return 2;
};

/** One answer for each line, before the next is read. A bad one gets its own line and stops nothing. */
async function answerLinesOf(model: FaultModel, lines: AsyncIterable<string>, io: Io): Promise<number> {
  for await (const line of lines) {
    if (line.trim() === '') continue;
    const json = jsonOf(line);
    io.out(
      JSON.stringify(
        'refusal' in json ? { case: null, error: { is: 'not-a-case', at: '' } } : answerText(model, json.value),
      ),
    );
  }
  return 0;
}

async function answerFile(model: FaultModel, path: string, asJson: boolean, io: Io): Promise<number> {
  let text: string;
  try {
    text = new TextDecoder().decode(await io.readFile(path));
  } catch (error) {
    return wrong(fill(said['not-read'], { file: path, why: error instanceof Error ? error.message : error }), io);
  }
  const json = jsonOf(text);
  if ('refusal' in json) return wrong(refusalLine(path, json.refusal), io);
  const parsed = zCaseLine.safeParse(json.value);
  if (!parsed.success) return wrong(refusalLine(path, fieldOf(text, parsed.error)), io);
  const answer = answerText(model, json.value);
  if (asJson) io.out(JSON.stringify(answer));
  if ('error' in answer) return wrong(badEntry(model, path, text, parsed.data.before, answer.error.at), io);
  if (!asJson) for (const line of answerLines(answer, planInShort(model, parsed.data))) io.out(line);
  return 0;
}

/** Which entry of the log nobody knows, where it stands and what is near it. */
function badEntry(model: FaultModel, file: string, text: string, before: readonly string[], at: string): string {
  const entry = before.indexOf(at);
  if (entry < 0) return fill(said['not-read'], { file, why: at });
  const [step = '', outcome = ''] = at.split(':');
  const known = model.steps[model.stepIndex.get(step) ?? -1];
  return refusalLine(file, {
    wrong: 'unknown-id',
    field: `before.${entry}`,
    line: lineIn(text, ['before', entry]),
    id: at,
    near: known
      ? near(
          outcome,
          known.outcomes.map(({ id }) => id),
        )
      : near(step, stepIds(model)),
  });
}
