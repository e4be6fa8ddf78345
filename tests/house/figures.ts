/**
 * `npm run house-figures`: how tidy the product code is, in figures to compare over time. With `-- --long` it names
 * every place it counted.
 */
import { declaredTwice } from './figures/declaredTwice.ts';
import { circles, importGraph, twoWayPairs } from './figures/importGraph.ts';
import { lineCounts } from './figures/lineCounts.ts';
import { typeAssertions, untypedWrites } from './figures/typing.ts';
import { areaOf, filesBelow, HOUSE, isCode, isTest, type Source } from './source.ts';

const long = process.argv.includes('--long');
const sources = HOUSE.flatMap((area) => filesBelow(area)).filter((source) => isCode(source) && !isTest(source));

/** One figure, and what was counted where it is asked for. */
function tell(name: string, counted: readonly string[], beside = ''): void {
  console.log(`${name.padEnd(52)}${String(counted.length).padStart(5)}${beside}`);
  if (long) for (const one of counted) console.log(`    ${one}`);
}

const graph = importGraph(sources);
tell('folders of core that import each other, pairs', twoWayPairs(graph, 'core'));
tell(
  'circles of files that import each other',
  circles(graph).map((circle) => circle.join(', ')),
);

const asserted = sources.flatMap(typeAssertions);
const byArea = HOUSE.map((area) => `${area} ${asserted.filter((one) => areaOf(one) === area).length}`);
tell('type assertions, but `as const`', asserted, `   (${byArea.join(', ')})`);

const { added, literal, folded } = untypedWrites(sources);
tell('entries added with any body', added);
tell('entries put together by hand', literal);
tell('folds that do not say what they fold', folded);
tell(
  'exported names declared more than once',
  [...declaredTwice(sources)].map(([name, files]) => `${name}: ${files.join(', ')}`),
);

console.log(`\n${'lines of a file'.padEnd(32)}files  median  p90  max`);
const lines = (name: string, of: readonly Source[]) => {
  const { files, median, p90, max } = lineCounts(of);
  const figures = [files, median, p90, max].map((figure, index) => String(figure).padStart([5, 8, 5, 5][index] ?? 5));
  console.log(`${name.padEnd(32)}${figures.join('')}`);
};
for (const area of HOUSE) {
  const inArea = sources.filter(({ path }) => areaOf(path) === area);
  lines(area, inArea);
  const rooms = Map.groupBy(inArea, ({ path }) => path.split('/').slice(0, 2).join('/'));
  for (const [room, files] of rooms) if (files.length > 1) lines(`  ${room}`, files);
}
lines('all', sources);
