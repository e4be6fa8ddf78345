import { type AttributeName, type AttributeValue, isAttributeName } from '../../core/fit/attributes.ts';
import { type Typed, typedFact } from '../../core/fit/typedFact.ts';

/** Facts as they stand in their fields; one that is not here was not touched. */
export type TypedFacts = { readonly [name in AttributeName]?: Typed };

type Written = Exclude<AttributeValue, readonly string[]> | string[];

const forDoor = (value: AttributeValue): Written => (typeof value === 'object' ? [...value] : value);

/** The facts that were touched, as the door takes them; null for one that is not known. */
export const writtenFacts = (touched: TypedFacts): Record<string, Written | null> =>
  Object.fromEntries(
    Object.entries(touched).flatMap(([name, typed]) => {
      const value = isAttributeName(name) ? typedFact(name, typed) : null;
      return [[name, value === null ? null : forDoor(value)]];
    }),
  );

/** Those that are known. */
export const knownFacts = (touched: TypedFacts): Record<string, Written> =>
  Object.fromEntries(
    Object.entries(writtenFacts(touched)).flatMap(([name, value]) => (value === null ? [] : [[name, value]])),
  );
