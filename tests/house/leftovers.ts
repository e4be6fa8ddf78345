import type { Finding, Source } from './source.ts';

type Forbidden = { readonly pattern: RegExp; readonly says: string; readonly except?: RegExp };

/** Texts no committed file may hold. Each pattern is written so that it does not find itself. */
const FORBIDDEN: readonly Forbidden[] = [
  // A note for later must say what is missing and why: at least four words after the colon.
  { pattern: /\bTOD[O]\b(?!: *\S+( +\S+){3})/, says: 'a note for later without its reason' },
  { pattern: /\b(FIXM[E]|HAC[K])\b/, says: 'a mark that belongs into the list of open work' },
  { pattern: /(^|[\s('"`])desig[n]\/\d?/, says: 'a folder that is not part of this project' },
  {
    pattern: /\.\.\/share[d]\b|\bshare[d]\/(design|sources|data|stack|style)/,
    says: 'a folder that is not part of this project',
    // The one place that knows where a shop of tests keeps the open data beside the project.
    except: /^\.ci\/run$/,
  },
  { pattern: /\b(stac[k]|styl[e])\.md\b|\bthe guid[e]\b/i, says: 'a text that is not part of this project' },
  { pattern: /\bissue[s]? #?\d/i, says: 'a number from a list that is not part of this project' },
];

/** Leftovers of the making in a file: notes without a reason, and pointers to texts nobody else has. */
export function leftovers({ path, text }: Source): readonly Finding[] {
  const lines = text.split('\n');
  return FORBIDDEN.filter(({ except }) => !except?.test(path)).flatMap(({ pattern, says }) => [
    ...(pattern.test(path) ? [`${path} is named after ${says}`] : []),
    ...lines.flatMap((line, index) =>
      pattern.test(line) ? [`${path}:${index + 1} holds ${says}: ${line.trim()}`] : [],
    ),
  ]);
}
