declare const brand: unique symbol;

/** A value that carries its meaning in its type: made in one place, impossible to mix up, free at run time. */
export type Brand<T, Name extends string> = T & { readonly [brand]: Name };
