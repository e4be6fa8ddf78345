import type { z } from 'zod';

type Def = {
  readonly type: string;
  readonly shape?: { readonly [field: string]: z.ZodType };
  readonly element?: z.ZodType;
  readonly innerType?: z.ZodType;
  readonly options?: readonly z.ZodType[];
  readonly items?: readonly z.ZodType[];
  readonly keyType?: z.ZodType;
  readonly valueType?: z.ZodType;
};

const PERSONAL = ['of', 'personal', 'value'];

/**
 * Where in a body text can stand that is not sealed, as paths: `told.lastWorked`, `cameAlong[].thing`. Texts of a list of
 * words, ids and tags (which a transform brands) are none; what lies in a personal value is sealed.
 */
export function plainTexts(shape: z.ZodType, path = ''): readonly string[] {
  const def = shape._zod.def as unknown as Def;
  const under = (inner: z.ZodType | undefined, step = '') => (inner ? plainTexts(inner, path + step) : []);
  switch (def.type) {
    case 'string':
    case 'any':
    case 'unknown':
    case 'custom':
    case 'lazy':
      return [path];
    case 'object': {
      const fields = Object.entries(def.shape ?? {});
      if (
        fields
          .map(([field]) => field)
          .toSorted()
          .join() === PERSONAL.join()
      )
        return [];
      return fields.flatMap(([field, inner]) => plainTexts(inner, path === '' ? field : `${path}.${field}`));
    }
    case 'array':
      return under(def.element, '[]');
    case 'tuple':
      return [...new Set((def.items ?? []).flatMap((item) => under(item, '[]')))];
    case 'record':
      return [...under(def.keyType, '{}'), ...under(def.valueType, '{}')];
    case 'union':
      return [...new Set((def.options ?? []).flatMap((option) => under(option)))];
    case 'pipe':
      return [];
    default:
      return def.innerType ? under(def.innerType) : [];
  }
}
