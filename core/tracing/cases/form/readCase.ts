import type { z } from 'zod';
import type { FaultModel } from '../../live/types.ts';
import { doubledKey } from '../../plan/problem/doubledKey.ts';
import { type BenchCase, zBenchCase } from './benchCase.ts';
import { lineIn } from './lineIn.ts';
import { unknownIn } from './unknownIn.ts';

/** Why a case file does not hold together: the field, its line from 1, and what is wrong there. */
export type CaseRefusal =
  | { readonly wrong: 'no-json'; readonly line: number; readonly because: string }
  | { readonly wrong: 'twice'; readonly field: string; readonly line: number }
  | { readonly wrong: 'field'; readonly field: string; readonly line: number; readonly because: string }
  | {
      readonly wrong: 'unknown-id';
      readonly field: string;
      readonly line: number;
      readonly id: string;
      readonly near: readonly string[];
    };

export type ReadCase =
  | { readonly ok: true; readonly case: BenchCase }
  | { readonly ok: false; readonly refusal: CaseRefusal };

/** Reads a case file against the model whose ids it must know. `name`: the file's name without its ending, which is its id. */
export function readCase(text: string, name: string, model: FaultModel): ReadCase {
  const json = jsonOf(text);
  if ('refusal' in json) return { ok: false, refusal: json.refusal };
  const parsed = zBenchCase.safeParse(json.value);
  if (!parsed.success) return { ok: false, refusal: fieldOf(text, parsed.error) };
  const field = (path: readonly (string | number)[], because: string): ReadCase => ({
    ok: false,
    refusal: { wrong: 'field', field: path.join('.'), line: lineIn(text, path), because },
  });
  if (parsed.data.id !== name) return field(['id'], `the file is called ${name}`);
  const unknown = unknownIn(parsed.data, model);
  if (unknown)
    return {
      ok: false,
      refusal: {
        wrong: 'unknown-id',
        field: unknown.path.join('.'),
        line: lineIn(text, unknown.path),
        id: unknown.id,
        near: unknown.near,
      },
    };
  return { ok: true, case: parsed.data };
}

/** The JSON of a text in which no name stands twice, or where it is none. */
export function jsonOf(text: string): { readonly value: unknown } | { readonly refusal: CaseRefusal } {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    const because = error instanceof Error ? error.message : String(error);
    const place = /line (\d+)/.exec(because)?.[1];
    return { refusal: { wrong: 'no-json', line: Number(place ?? text.split('\n').length), because } };
  }
  const twice = doubledKey(text);
  if (twice === undefined) return { value };
  const path = twice.split(/[.[\]]+/).filter(Boolean);
  return { refusal: { wrong: 'twice', field: twice, line: lineIn(text, path) } };
}

/** The first field that is not as it should be. */
export function fieldOf(text: string, error: z.ZodError): CaseRefusal {
  const issue = deepest(error.issues);
  const path = issue.path.map((key) => (typeof key === 'symbol' ? String(key) : key));
  return { wrong: 'field', field: path.join('.'), line: lineIn(text, path), because: issue.message };
}

/** Of what may be written in several ways, what is wrong with the way that was meant: the one that went deepest. */
function deepest(issues: readonly z.core.$ZodIssue[]): { readonly path: PropertyKey[]; readonly message: string } {
  const [first] = issues;
  if (!first) return { path: [], message: '' };
  if (first.code !== 'invalid_union') return first;
  const inside = first.errors.filter((list) => list.length > 0).map(deepest);
  const best = inside.toSorted((a, b) => b.path.length - a.path.length)[0];
  return best && best.path.length > 0 ? { path: [...first.path, ...best.path], message: best.message } : first;
}
