import limits from '../../assets/readings/limits.json' with { type: 'json' };
import { say } from '../text/say.ts';
import type { DriveChange } from './compareDrives.ts';
import type { MachineReading } from './reading.ts';
import type { RunFigures } from './runFigures.ts';
import { ENGLISH, type ReadingWords } from './words.ts';

/** One line of proving: what was measured, the limit it is held against, and where that limit comes from. */
export type Proof = {
  readonly what: string;
  readonly value: string;
  readonly limit: string | null;
  readonly source: string | null;
  /** `null` where there is no limit to hold it against, or nothing was said. */
  readonly within: boolean | null;
};

/** A drive that is to go home has none of these above zero; above zero is a reason to look, not proof of failure. */
const FIGURES = ['reallocated', 'pending', 'uncorrectable', 'mediaErrors'] as const;

/** A reading taken at proving, line by line against limits. What the reading does not say has no line. */
export function proofsOf(reading: MachineReading, words: ReadingWords = ENGLISH): readonly Proof[] {
  const { proof } = words;
  return [
    ...reading.drives.flatMap((drive): readonly Proof[] => {
      const model = drive.model ?? proof['some-drive'];
      const { celsius, warningCelsius, criticalCelsius } = drive.facts;
      const limit = warningCelsius ?? criticalCelsius;
      return [
        ...(drive.health === null
          ? []
          : [
              {
                what: say(proof.verdict, { model }),
                value: proof[drive.health],
                limit: proof.passed,
                source: limits.sources['smart-verdict'],
                within: drive.health === 'passed',
              },
            ]),
        ...FIGURES.flatMap((figure): readonly Proof[] => {
          const value = drive[figure];
          if (value === null) return [];
          const source = limits.sources[figure === 'mediaErrors' ? 'nvme' : 'drive-figures'];
          const what = say(proof.figure, { model, figure: proof.figures[figure] });
          return [{ what, value: String(value), limit: '0', source, within: value === 0 }];
        }),
        ...(celsius === null ? [] : [heat(say(proof.heat, { of: model }), celsius, limit, 'drive-limits', words)]),
      ];
    }),
    ...reading.temperatures.map(({ chip, label, celsius, high, critical }) =>
      heat(say(proof.heat, { of: `${label} (${chip})` }), celsius, high ?? critical, 'chip-limits', words),
    ),
  ];
}

function heat(
  what: string,
  celsius: number,
  limit: number | null,
  source: 'drive-limits' | 'chip-limits',
  words: ReadingWords,
): Proof {
  const degrees = (value: number) => say(words.proof.celsius, { value });
  return {
    what,
    value: degrees(celsius),
    limit: limit === null ? null : degrees(limit),
    source: limit === null ? null : limits.sources[source],
    within: limit === null ? null : celsius <= limit,
  };
}

/** Runs as typed: no errors is the limit; a temperature counts only against a limit that was typed with it. */
export function proofsOfRuns(runs: readonly RunFigures[], words: ReadingWords = ENGLISH): readonly Proof[] {
  const { proof } = words;
  return runs.flatMap((run): readonly Proof[] => {
    const lasted = run.minutes === null ? '' : say(proof.lasted, { minutes: run.minutes });
    const passes = run.passes === null ? '' : say(proof.passes, { n: run.passes });
    const value = run.errors === null ? proof['errors-not-said'] : say(proof.errors, { n: run.errors });
    return [
      {
        what: proof[run.run],
        value: [passes, lasted, value].filter((part) => part !== '').join(', '),
        limit: say(proof.errors, { n: 0 }),
        source: limits.sources.run,
        within: run.errors === null ? null : run.errors === 0,
      },
      ...(run.celsius === null
        ? []
        : [
            {
              ...heat(say(proof.heat, { of: proof[run.run] }), run.celsius, run.limitCelsius, 'chip-limits', words),
              source: run.limitCelsius === null ? null : limits.sources.typed,
            },
          ]),
    ];
  });
}

/** What changed in drives on our bench: a figure that grew is out of limit, whatever it was before. */
export function proofsOfChanges(changes: readonly DriveChange[], words: ReadingWords = ENGLISH): readonly Proof[] {
  const { proof } = words;
  return changes.flatMap((change): readonly Proof[] => {
    const model = change.model ?? proof['some-drive'];
    if (change.is !== 'compared')
      return [{ what: model, value: proof[change.is], limit: null, source: null, within: null }];
    return change.figures.map(({ figure, before, after, change: way }) => ({
      what: say(proof.figure, { model, figure: proof.figures[figure] }),
      value: say(proof[way], { before, after }),
      limit: proof['not-to-grow'],
      source: limits.sources[figure === 'mediaErrors' || figure === 'percentageUsed' ? 'nvme' : 'drive-figures'],
      // Endurance is used by every write: that it grows on the bench is no fault.
      within: figure === 'percentageUsed' ? null : way !== 'grew',
    }));
  });
}
