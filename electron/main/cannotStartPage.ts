import { plainPage } from '../page/plainPage.ts';
import type { StartRefusal } from '../service/backing.ts';
import { cannotStart } from '../words/cannotStart.ts';
import { shellWords } from '../words/shellWords.ts';

/** The page shown instead of the shop when it cannot be opened: why, where, what was left as it is, two ways out. */
export function cannotStartPage(refusal: StartRefusal): Response {
  const { says, path, unchanged, ways } = cannotStart(refusal);
  const { title, where, waysOut } = shellWords.cannotStart;
  const { body, headers } = plainPage(shellWords.language, title, [
    { say: says },
    ...(path ? [{ head: where }, { exactly: path }] : []),
    { say: unchanged },
    { head: waysOut },
    { ways },
  ]);
  return new Response(body, { headers });
}
