import said from '../../assets/words/en/estimate.json';

/** What drives the spread of an estimate, in words; a task that the shop named itself says its own name. */
export const driverWords = (drivers: readonly string[]): string =>
  drivers.map((id) => (said.drivers as Readonly<Record<string, string>>)[id] ?? id).join(', ');
