import alsoCalled from '../../../assets/words/en/also-called.json';

/** A step as it is looked for: what it is called, and what is done. */
export type Findable = { readonly id: string; readonly says: string };

const OTHER_NAMES = Object.entries(alsoCalled);
const wordsIn = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}\p{N}.]+/u)
    .filter((word) => word !== '');

/**
 * The steps that have words beginning with all that was typed, as they are called or as the trade also calls what they are
 * about; those that have them in their own words come first.
 */
export function findSteps(steps: readonly Findable[], typed: string): readonly string[] {
  const looked = wordsIn(typed);
  const told = steps.map(({ id, says }) => {
    const own = wordsIn(says);
    const also = OTHER_NAMES.filter(([name]) => says.toLowerCase().includes(name)).flatMap(([, names]) =>
      wordsIn(names),
    );
    return { id, own, all: [...own, ...also] };
  });
  const by = (of: 'own' | 'all') =>
    told.filter((one) => looked.every((word) => one[of].some((has) => has.startsWith(word))));
  return [...new Set([...by('own'), ...by('all')].map(({ id }) => id))];
}
