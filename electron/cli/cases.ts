import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import words from '../../assets/words/en/cli.json' with { type: 'json' };
import { fill } from '../../core/text/wordsFor.ts';
import type { BenchCase } from '../../core/tracing/cases/form/benchCase.ts';
import { readCase } from '../../core/tracing/cases/form/readCase.ts';
import { type Judged, judge } from '../../core/tracing/cases/judge/judge.ts';
import { tally } from '../../core/tracing/cases/judge/tally.ts';
import { play } from '../../core/tracing/cases/play/play.ts';
import type { FaultModel } from '../../core/tracing/live/types.ts';
import { caseArguments } from './cases/caseArguments.ts';
import { refusalLine } from './cases/caseWords.ts';
import { judgedJson, judgedLines, lastLine, tallyLines } from './cases/judgedText.ts';
import { modelFrom } from './cases/modelFrom.ts';
import type { CliCommand, Io } from './command.ts';

const said = words.cases;
const ENDING = '.json';

/** `knowngood cases`: plays every bench case of a folder to its end and judges it. */
export const cases: CliCommand = {
  name: 'cases',
  help: said.cases,
  run: async (args, io) => {
    const asked = caseArguments(args, said.whichFolder);
    if ('wrong' in asked) return wrong(asked.wrong, io);
    const found = await modelFrom(asked.model, io);
    if ('says' in found) return wrong(found.says, io);
    const read = await readCases(asked.path, found.model, io);
    if (read === null) return 2;
    const judged = read.map((bench) => {
      const one = judge(found.model, play(found.model, bench));
      if (asked.json) io.out(JSON.stringify(judgedJson(one)));
      else for (const line of judgedLines(one)) io.out(line);
      return one;
    });
    return ended(judged, asked.json, io);
  },
};

function ended(judged: readonly Judged[], asJson: boolean, io: Io): number {
  const all = tally(judged);
  if (asJson) io.out(JSON.stringify({ tally: all }));
  else for (const line of tallyLines(all)) io.out(line);
  io.out(lastLine(all));
  return 0;
}

const wrong = (says: string, io: Io): number => {
  io.err(says);
  return 2;
};

/** All cases of a folder; every one that does not hold together is told, and then none is played. */
async function readCases(folder: string, model: FaultModel, io: Io): Promise<readonly BenchCase[] | null> {
  const read: BenchCase[] = [];
  let whole = true;
  let files: readonly string[];
  try {
    files = (await readdir(folder)).filter((name) => name.endsWith(ENDING)).toSorted();
  } catch (error) {
    wrong(fill(said['not-read'], { file: folder, why: error instanceof Error ? error.message : error }), io);
    return null;
  }
  if (files.length === 0) {
    wrong(fill(said['no-cases'], { folder }), io);
    return null;
  }
  for (const file of files) {
    const text = new TextDecoder().decode(await io.readFile(join(folder, file)));
    const found = readCase(text, file.slice(0, -ENDING.length), model);
    if (found.ok) read.push(found.case);
    else {
      io.err(refusalLine(file, found.refusal));
      whole = false;
    }
  }
  return whole ? read : null;
}
