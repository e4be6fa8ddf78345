import type { z } from 'zod';

type Def = {
  readonly type: string;
  readonly shape?: { readonly [field: string]: z.ZodType };
  readonly element?: z.ZodType;
  readonly innerType?: z.ZodType;
  readonly options?: readonly z.ZodType[];
  readonly in?: z.ZodType;
};
const defOf = (shape: z.ZodType) => shape._zod.def as unknown as Def;

/** From so many letters on that are let in, it is text that people write, and no id. */
const TEXT_FROM = 200;

/** Is it text that people write? */
const isText = (shape: z.ZodType): boolean => {
  const def = defOf(shape);
  if (def.type === 'string') return ((shape as z.ZodString).maxLength ?? 0) >= TEXT_FROM;
  return (def.type === 'nullable' || def.type === 'optional') && def.innerType ? isText(def.innerType) : false;
};

/**
 * A command's input with a marker in every text that its shape has, one of its own for each place, so that a field that
 * comes later is marked too. Fields in `but` stay as they are, where a name has to be somebody's.
 */
export function marked(
  command: string,
  shape: z.ZodType,
  value: unknown,
  but: readonly string[] = [],
  path = '',
): unknown {
  const def = defOf(shape);
  const under = (inner: z.ZodType | undefined, one: unknown, step = path) =>
    inner ? marked(command, inner, one, but, step) : one;
  if (isText(shape)) return `MARK ${command} ${path}`;
  switch (def.type) {
    case 'object': {
      if (typeof value !== 'object' || value === null) return value;
      const given = value as { readonly [field: string]: unknown };
      const fields = Object.entries(def.shape ?? {}).flatMap(([field, inner]) => {
        if (but.includes(field) || (given[field] === undefined && !isText(inner)))
          return field in given ? [[field, given[field]]] : [];
        return [[field, under(inner, given[field], path === '' ? field : `${path}.${field}`)]];
      });
      return Object.fromEntries(fields);
    }
    case 'array': {
      const items = Array.isArray(value) ? value : [];
      if (items.length === 0 && def.element && isText(def.element)) return [under(def.element, '', `${path}[]`)];
      return items.map((item) => under(def.element, item, `${path}[]`));
    }
    case 'union':
      return under(
        def.options?.find((option) => option.safeParse(value).success),
        value,
      );
    case 'nullable':
    case 'optional':
      return value === null || value === undefined ? value : under(def.innerType, value);
    case 'pipe':
      return under(def.in, value);
    default:
      return value;
  }
}
