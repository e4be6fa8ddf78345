import type { Contribution, TemperatureReading } from '../reading.ts';
import { isObject, numberIn, objectIn, type ToolJson } from './json.ts';

/** Is it what `sensors -j` prints: chips, each with its adapter? */
export const isSensorsJson = (root: ToolJson): boolean =>
  Object.values(root).some((chip) => isObject(chip) && typeof chip.Adapter === 'string');

/** Temperatures of `sensors -j`, °C, with the limits each chip names for itself. */
export function readSensors(root: ToolJson): Contribution {
  const temperatures = Object.entries(root).flatMap(([chip, found]) =>
    isObject(found) ? Object.keys(found).flatMap((label) => temperature(chip, label, objectIn(found, label))) : [],
  );
  return { tool: 'sensors', temperatures, gaps: [] };
}

function temperature(chip: string, label: string, values: ToolJson): readonly TemperatureReading[] {
  const of = (kind: string) => {
    const key = Object.keys(values).find((name) => /^temp\d+_/.test(name) && name.endsWith(`_${kind}`));
    return key === undefined ? null : numberIn(values, key);
  };
  const celsius = of('input');
  return celsius === null ? [] : [{ chip, label, celsius, high: limit(of('max')), critical: limit(of('crit')) }];
}

/** Chips without a limit name one that nothing reaches. */
const limit = (celsius: number | null): number | null =>
  celsius === null || celsius <= 0 || celsius > 150 ? null : celsius;
