import type { ProcessorReading } from '../reading.ts';
import { squeezed, valueIn, wholeNumber } from '../values.ts';
import type { DmiRecord } from './dmiRecords.ts';
import { socketName } from './socketName.ts';

/** The populated central processors. A record that does not say whether it is populated counts when it names one. */
export const dmiProcessors = (records: readonly DmiRecord[]): readonly ProcessorReading[] =>
  records.filter((record) => record.type === 4 && isCentral(record) && isPopulated(record)).map(processor);

function isCentral({ fields }: DmiRecord): boolean {
  const type = fields.get('Type');
  return type === undefined || squeezed(type) === 'Central Processor' || valueIn(type) === null;
}

function isPopulated({ fields }: DmiRecord): boolean {
  const status = fields.get('Status');
  return status === undefined ? valueIn(fields.get('Version')) !== null : /^\s*Populated/i.test(status);
}

function processor({ fields }: DmiRecord): ProcessorReading {
  return {
    name: valueIn(fields.get('Version')),
    socket: socketName(fields.get('Socket Designation'), fields.get('Upgrade')),
    cores: wholeNumber(fields.get('Core Count')),
    threads: wholeNumber(fields.get('Thread Count')),
    maker: valueIn(fields.get('Manufacturer')),
    serial: valueIn(fields.get('Serial Number')),
  };
}
