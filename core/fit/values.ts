import type { Attributes } from '../custody/part.ts';

/** A number on the part, in the unit that its attribute has in `assets/fit/attributes.json` (a number of mm, W, GiB …), or `undefined` when it is not known. */
export const numberFact = (attributes: Attributes, name: string): number | undefined => {
  const value = attributes[name];
  return typeof value === 'number' ? value : undefined;
};

/** A text on the part, or `undefined` when it is not known. */
export const textOf = (attributes: Attributes, name: string): string | undefined => {
  const value = attributes[name];
  return typeof value === 'string' ? value : undefined;
};

/** A yes or no on the part, or `undefined` when it is not known. */
export const flagOf = (attributes: Attributes, name: string): boolean | undefined => {
  const value = attributes[name];
  return typeof value === 'boolean' ? value : undefined;
};

/** A list on the part (a lone text is a list of one), or `undefined` when it is not known. */
export const listOf = (attributes: Attributes, name: string): readonly string[] | undefined => {
  const value = attributes[name];
  if (typeof value === 'string') return [value];
  return Array.isArray(value) ? value : undefined;
};
