import alsoCalled from '../../../assets/words/en/also-called.json';

/** A step as it is looked for: what it is called, and what is done. */
export type Findable = { readonly id: string; readonly says: string };

const OTHER_NAMES = Object.entries(alsoCalled);
const plain = (text: string): string => text.toLowerCase().replaceAll('’', "'");

/**
 * The steps that hold every word that was typed, as they are called or as the trade also calls what they are about; those
 * that hold all of it in their own words come first.
 */
export function findSteps(steps: readonly Findable[], typed: string): readonly string[] {
  const words = plain(typed)
    .split(/\s+/)
    .filter((word) => word !== '');
  const told = steps.map(({ id, says }) => {
    const own = plain(says);
    const also = OTHER_NAMES.filter(([name]) => own.includes(name)).map(([, names]) => names);
    return { id, own, all: [own, ...also].join(' ') };
  });
  const by = (text: 'own' | 'all') => told.filter((one) => words.every((word) => one[text].includes(word)));
  return [...new Set([...by('own'), ...by('all')].map(({ id }) => id))];
}
