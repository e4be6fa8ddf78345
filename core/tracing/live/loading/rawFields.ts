import { z } from 'zod';

/** A name in a fault model's files. */
export const id = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'small letters, digits and single hyphens');
export const chance = z.number().min(0).max(1);

/** A source note names a year, a manual or an address that was read, or says openly that there is none. */
const SOURCED = /common practice, no source|\b(19|20)\d\d\b|\bmanuals?\b|\b[\w-]+(\.[a-z]{2,})+\//;
export const source = z
  .string()
  .regex(
    SOURCED,
    'names no source: a publication with its year, an address, a manual, or “common practice, no source”',
  );
