/** A JSON value without numbers that JSON cannot carry. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };
