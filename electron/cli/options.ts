import { type ParseArgsOptionsConfig, parseArgs } from 'node:util';
import { tableOf } from '../../core/table.ts';

export type Options<Names extends string> = { readonly [name in Names]: string | undefined };

/**
 * Reads `--name VALUE` options and the rest. Anything that is not asked for is named, not ignored.
 * @returns `wrong` with a sentence when the arguments cannot be read.
 */
export function readOptions<Names extends string>(
  args: readonly string[],
  names: readonly Names[],
): { readonly options: Options<Names>; readonly rest: readonly string[] } | { readonly wrong: string } {
  const config: ParseArgsOptionsConfig = Object.fromEntries(names.map((name) => [name, { type: 'string' as const }]));
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: config,
      allowPositionals: true,
      strict: true,
    });
    const options = tableOf(names, (name) => {
      const value = values[name];
      return typeof value === 'string' ? value : undefined;
    });
    return { options, rest: positionals };
  } catch (error) {
    return { wrong: error instanceof Error ? error.message : String(error) };
  }
}
