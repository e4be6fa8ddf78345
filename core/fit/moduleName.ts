/** Nominal data rates in MT/s by generation (JEDEC speed bins; from memory beyond those the module-name table names). */
const SPEEDS: Readonly<Record<string, readonly number[]>> = {
  DDR3: [800, 1066, 1333, 1600, 1866, 2133],
  DDR3L: [800, 1066, 1333, 1600, 1866],
  DDR4: [1600, 1866, 2133, 2400, 2666, 2933, 3200],
  DDR5: [4000, 4400, 4800, 5200, 5600, 6000, 6400, 6800, 7200],
};

/** A module moves eight bytes at each transfer. */
const BYTES = 8;
/** Names are rounded by habit, not by rule (10,664 is sold as 10600): names this near in MB/s mean the same. */
const NEAR = 100;

export type ModuleSpeed = { readonly memory: string; readonly speed: number };

/** MB/s of a module at this data rate (MT/s): what its bandwidth name is rounded from. */
export const moduleBandwidth = (speed: number): number => speed * BYTES;

/** The usual bandwidth name: `PC4-21300` for DDR4 at 2666 MT/s. Cut down to whole hundreds, as the names in use are. */
export function moduleName({ memory, speed }: ModuleSpeed): string {
  const generation = memory.replace('DDR', '');
  return `PC${generation}-${Math.floor(moduleBandwidth(speed) / 100) * 100}`;
}

/**
 * Reads what stands on a module: `DDR4-2666`, the trade's bandwidth name `PC4-21300`, or the label of JEDEC, which from
 * DDR4 on puts the data rate there (`PC4-2400T`; below 10,000 it cannot be a bandwidth).
 * `undefined` when it is none of these or no speed of that generation is near.
 */
export function parseModuleName(text: string): ModuleSpeed | undefined {
  const read = /^\s*(DDR|PC)([345])(L?)-(\d{3,5})([A-Z]{0,3})(?:-.*)?\s*$/i.exec(text);
  if (!read) return undefined;
  const [, style, generation, low, digits] = read;
  const memory = `DDR${generation}${(low ?? '').toUpperCase()}`;
  const value = Number(digits);
  const isRate = style?.toUpperCase() === 'DDR' || (generation !== '3' && value < 10_000);
  const speed = nearest(SPEEDS[memory] ?? [], isRate ? value * BYTES : value);
  return speed === undefined ? undefined : { memory, speed };
}

/** Whether two data rates are the same one, rounded differently (1066 and 1067 MT/s). */
export const sameSpeed = (a: number, b: number): boolean => Math.abs(a - b) * BYTES <= NEAR;

function nearest(speeds: readonly number[], bandwidth: number): number | undefined {
  const far = (speed: number) => Math.abs(moduleBandwidth(speed) - bandwidth);
  const best = speeds.reduce<number | undefined>(
    (near, speed) => (near === undefined || far(speed) < far(near) ? speed : near),
    undefined,
  );
  return best !== undefined && far(best) <= NEAR ? best : undefined;
}
