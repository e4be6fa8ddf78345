import { z } from 'zod';
import type { Json } from './json.ts';

/** What a shape lets through, unchangeable all the way down. */
export type Shaped<S extends z.ZodType> = Unchanging<z.output<S>>;

type Plain = string | number | boolean | null | undefined;
type Unchanging<T> = unknown extends T
  ? T
  : Json extends T
    ? T
    : T extends Plain
      ? T
      : { readonly [Key in keyof T]: Unchanging<T[Key]> };

/** Kinds with their bodies, given the kinds with their shapes. */
export type BodiesOf<Shapes extends { readonly [kind: string]: z.ZodType }> = {
  readonly [Kind in keyof Shapes]: Shaped<Shapes[Kind]>;
};

/** Any of an object's fields, each as it is there or left out: what a change says. */
export const someOf = <Fields extends z.ZodRawShape>(whole: z.ZodObject<Fields>) =>
  z.strictObject(
    Object.fromEntries(Object.entries(whole.shape).map(([name, field]) => [name, z.exactOptional(field)])) as {
      [Name in keyof Fields]: z.ZodExactOptional<Fields[Name]>;
    },
  );
