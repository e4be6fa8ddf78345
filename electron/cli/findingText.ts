import cliWords from '../../assets/words/en/cli.json' with { type: 'json' };
import { fill } from '../../core/text/wordsFor.ts';
import type { JournalFinding } from '../../db/index.ts';

/** One thing that is wrong with a shop's data, as a line. */
export function findingText({ seq, wrong, detail }: JournalFinding): string {
  const facts = {
    seq,
    what: cliWords.verifyWrong[wrong],
    detail: detail === undefined ? '' : fill(cliWords.verifyDetail, { detail }),
  };
  return fill(seq === 0 ? cliWords.verifyBeside : cliWords.verifyAt, facts);
}
