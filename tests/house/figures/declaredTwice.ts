import { identifier, isNode, type Node, parse, type Source } from '../source.ts';

/** Exported names that more than one file declares, with those files. What a file only passes on is not counted. */
export function declaredTwice(sources: readonly Source[]): ReadonlyMap<string, readonly string[]> {
  const files = new Map<string, Set<string>>();
  for (const source of sources) {
    for (const name of exportsOf(source)) files.set(name, (files.get(name) ?? new Set()).add(source.path));
  }
  return new Map(
    [...files]
      .filter(([, paths]) => paths.size > 1)
      .map(([name, paths]): [string, string[]] => [name, [...paths].sort()])
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );
}

function exportsOf(source: Source): readonly string[] {
  return (parse(source).program.body as unknown as readonly Node[]).flatMap((statement) => {
    if (statement.type !== 'ExportNamedDeclaration' || !isNode(statement.declaration)) return [];
    const { declaration } = statement;
    const declared = Array.isArray(declaration.declarations) ? (declaration.declarations as Node[]) : [declaration];
    return declared.flatMap((one) => identifier(one.id) ?? []);
  });
}
