import limits from '../../../assets/readings/limits.json' with { type: 'json' };
import type { Remark } from '../../custody/machineReport.ts';
import { say } from '../../text/say.ts';
import { DAY_MS, type EpochMs } from '../../time.ts';
import type { MachineReading } from '../reading.ts';
import type { ReadingWords } from '../words.ts';
import { driveRemarks } from './driveRemarks.ts';
import { memoryRemarks } from './memoryRemarks.ts';

/**
 * What a reading gives reason to say, each with its source.
 * @param asOf The day it is read; without it nothing is said of the firmware's age.
 */
export const remarksOf = (
  reading: MachineReading,
  words: ReadingWords,
  asOf: EpochMs | null = null,
): readonly Remark[] => [
  ...memoryRemarks(reading.slots, words),
  ...socketRemarks(reading, words),
  ...firmwareRemarks(reading.firmware.date, words, asOf),
  ...reading.drives.flatMap((drive, index) => driveRemarks(drive, `drives[${index}]`, words)),
  ...reading.temperatures.flatMap(({ chip, label, celsius, high, critical }): readonly Remark[] => {
    const limit = high ?? critical;
    if (limit === null || celsius <= limit) return [];
    const { says, why } = words.remark['chip-hot'];
    const fills = { chip, label, celsius, limit };
    return [{ about: 'temperatures', says: say(says, fills), why, source: limits.sources['chip-limits'] }];
  }),
];

function socketRemarks({ processors }: MachineReading, words: ReadingWords): readonly Remark[] {
  return processors.flatMap(({ socket }, index) => {
    if (!socket?.startsWith('BGA')) return [];
    const { says, why } = words.remark['soldered-socket'];
    const source = limits.sources['soldered-socket'];
    return [{ about: `processors[${index}].socket`, says: say(says, { socket }), why, source }];
  });
}

/** Milliseconds of a mean Gregorian year: an age in whole years needs no calendar. */
const YEAR = 365.2425 * DAY_MS;

/**
 * The day of a firmware, in milliseconds since 1970 (UTC): SMBIOS gives it as month/day/year (DSP0134 7.1); the tool may be
 * asked for another form, which is left alone: null.
 */
export function firmwareDay(date: string | null): number | null {
  const read = /^(\d{2})\/(\d{2})\/(\d{4})$/.exec(date ?? '');
  const [month, day, year] = [Number(read?.[1]), Number(read?.[2]), Number(read?.[3])];
  return read && month >= 1 && month <= 12 && day >= 1 && day <= 31 && year >= 1980
    ? Date.UTC(year, month - 1, day)
    : null;
}

function firmwareRemarks(date: string | null, words: ReadingWords, asOf: EpochMs | null): readonly Remark[] {
  const day = firmwareDay(date);
  if (day === null || asOf === null) return [];
  const years = Math.floor((asOf - day) / YEAR);
  if (years < limits.firmwareOldAfterYears.value) return [];
  const { says, why } = words.remark['firmware-old'];
  return [
    { about: 'firmware.date', says: say(says, { date: date ?? '', years }), why, source: limits.sources.firmware },
  ];
}
