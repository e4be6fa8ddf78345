import { parseArgs } from 'node:util';

export type CaseArguments = {
  readonly json: boolean;
  readonly model: string | undefined;
  /** The one file or folder asked about; "-" is standard input. */
  readonly path: string;
};

/** Reads what stands after `next` or `cases`; `wrong` tells a person what is wrong with it. */
export function caseArguments(args: readonly string[], missing: string): CaseArguments | { readonly wrong: string } {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { json: { type: 'boolean', default: false }, model: { type: 'string' } },
      allowPositionals: true,
      strict: true,
    });
    const [path, ...more] = positionals;
    if (path === undefined || more.length > 0) return { wrong: missing };
    return { json: values.json, model: values.model, path };
  } catch (error) {
    return { wrong: error instanceof Error ? error.message : String(error) };
  }
}
