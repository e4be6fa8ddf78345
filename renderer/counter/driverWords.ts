import said from '../../assets/words/en/estimate.json';

const DRIVERS: Readonly<Record<string, string>> = said.drivers;

/** What drives the spread of an estimate, in words; a task that the shop named itself says its own name. */
export const driverWords = (drivers: readonly string[]): string => drivers.map((id) => DRIVERS[id] ?? id).join(', ');
