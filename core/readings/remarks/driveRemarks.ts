import limits from '../../../assets/readings/limits.json' with { type: 'json' };
import type { Remark } from '../../custody/machineReport.ts';
import { keyOf } from '../../table.ts';
import { say } from '../../text/say.ts';
import type { DriveReading } from '../reading.ts';
import type { ReadingWords } from '../words.ts';

type Key = keyof ReadingWords['remark'];
type Source = keyof typeof limits.sources;
type Fills = Readonly<Record<string, string | number>>;

/** What a drive's own figures give reason to say, each with what it rests on. */
export function driveRemarks(drive: DriveReading, about: string, words: ReadingWords): readonly Remark[] {
  const { facts } = drive;
  const remark = (key: Key, source: Source, fills: Fills = {}): Remark => ({
    about,
    says: say(words.remark[key].says, fills),
    why: say(words.remark[key].why, fills),
    source: limits.sources[source],
  });
  const used = drive.percentageUsed ?? 0;
  const spareLow = facts.spare !== null && facts.spareThreshold !== null && facts.spare < facts.spareThreshold;
  const hotLimit = facts.warningCelsius ?? facts.criticalCelsius;
  const hot = facts.celsius !== null && hotLimit !== null && hotLimit > 0 && facts.celsius > hotLimit;
  return [
    ...(drive.health === 'failed' ? [remark('drive-failed', 'smart-verdict')] : []),
    ...limits.driveFigures.flatMap(({ attribute, figure }) => {
      const named = keyOf(words.figures, figure);
      const value = figureOf(drive, named);
      const name = words.figures[named];
      return value !== null && value > 0 ? [remark('drive-figure', 'drive-figures', { attribute, name, value })] : [];
    }),
    ...facts.failingNow.map((name) => remark('attribute-now', 'smartctl', { name })),
    ...facts.failedBefore.map((name) => remark('attribute-before', 'smartctl', { name })),
    ...criticalWarnings(facts.criticalWarning ?? 0, words, remark),
    ...(used >= 100 ? [remark('nvme-worn', 'nvme', { used })] : []),
    ...(spareLow ? [remark('nvme-spare', 'nvme', { spare: facts.spare ?? 0, limit: facts.spareThreshold ?? 0 })] : []),
    ...((drive.mediaErrors ?? 0) > 0 ? [remark('nvme-media-errors', 'nvme', { n: drive.mediaErrors ?? 0 })] : []),
    ...unsafeShutdowns(drive, remark),
    ...(hot
      ? [
          remark('drive-hot', facts.warningCelsius === null ? 'drive-limits' : 'nvme-limits', {
            celsius: facts.celsius ?? 0,
            limit: hotLimit,
          }),
        ]
      : []),
    ...exitBits(facts.exitStatus ?? 0, words, remark),
  ];
}

type Say = (key: Key, source: Source, fills?: Fills) => Remark;

function figureOf(drive: DriveReading, figure: keyof ReadingWords['figures']): number | null {
  return figure === 'reportedUncorrectable' || figure === 'commandTimeouts' ? drive.facts[figure] : drive[figure];
}

/** The bits of an NVMe critical warning byte, one remark each; bits without a known meaning together. */
function criticalWarnings(byte: number, words: ReadingWords, remark: Say): readonly Remark[] {
  const set = limits.nvmeCriticalWarning.filter(({ bit }) => isSet(byte, bit));
  const known = limits.nvmeCriticalWarning.reduce((mask, { bit }) => mask | (1 << bit), 0);
  return [
    ...set.map(({ means, source }) =>
      remark('nvme-warning', keyOf(limits.sources, source), {
        what: words['nvme-warnings'][keyOf(words['nvme-warnings'], means)],
      }),
    ),
    ...((byte & ~known) === 0 ? [] : [remark('nvme-warning-other', 'nvme', { byte: byte.toString(16) })]),
  ];
}

/** The bits of the tool's exit status, one remark each. */
function exitBits(status: number, words: ReadingWords, remark: Say): readonly Remark[] {
  return limits.smartctlExitStatus
    .filter(({ bit }) => isSet(status, bit))
    .map(({ bit, means }) =>
      remark('exit-status', 'smartctl', { bit, what: words['exit-bits'][keyOf(words['exit-bits'], means)] }),
    );
}

const isSet = (byte: number, bit: number): boolean => Math.floor(byte / 2 ** bit) % 2 === 1;

function unsafeShutdowns({ facts }: DriveReading, remark: Say): readonly Remark[] {
  const { unsafeShutdowns: n, powerCycles } = facts;
  if (n === null || n === 0) return [];
  return powerCycles === null
    ? [remark('unsafe-shutdowns', 'nvme', { n })]
    : [remark('unsafe-shutdowns-of', 'nvme', { n, of: powerCycles })];
}
