declare const meaning: unique symbol;

/** A value that carries its meaning in its type: made in one place, impossible to mix up, free at run time. */
export type Brand<T, Name extends string> = T & { readonly [meaning]: Name };

type PlainOf<Branded> = Branded extends string ? string : Branded extends number ? number : never;

/**
 * What makes values of one brand. No value tells at run time what it means, so that the assertion behind every brand
 * stands here, once, and is named where the brand is declared. A brand whose values have a form (a tag, a currency) is
 * made only behind the check of that form, in its own file. Hand what it makes to a shape by a name of its own: a call
 * inside a shape keeps the shape, and zod with it, in the page.
 */
export function brand<Branded extends Brand<string | number, string>>(): (plain: PlainOf<Branded>) => Branded {
  return (plain: string | number) => plain as Branded;
}
