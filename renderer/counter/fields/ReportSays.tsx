import type { MachineReport, SaidDrive } from '../../../core/custody/machineReport.ts';
import type { MachineReading } from '../../../core/readings/reading.ts';
import { saidOf } from '../../../core/readings/readText.ts';
import { shareForm } from '../../../core/readings/share.ts';
import { ENGLISH } from '../../../core/readings/words.ts';
import { epochMs } from '../../../core/time.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import type { Words } from '../../kit/text/words.tsx';
import { useWords } from '../../kit/text/words.tsx';

/** What a report names, what in it gives reason to look, and what it leaves open: told, not seen. */
export function ReportSays({ reading }: { readonly reading: MachineReading }) {
  const { t } = useWords();
  const today = epochMs(Date.now());
  const said = saidOf(reading, ENGLISH, today);
  if (said.kinds.length === 0) return <p className="k-small">{said.gaps[0]?.why}</p>;
  return (
    <div className="k-small counter-stack">
      <p>{namedIn(said, t)}</p>
      {said.drives.length > 0 && (
        <ul>
          {said.drives.map((drive, index) => (
            <li key={index}>{driveSays(drive, t)}</li>
          ))}
        </ul>
      )}
      {said.remarks.length > 0 && (
        <ul aria-label={t('counter.report.remarks')}>
          {said.remarks.map(({ about, says, why, source }) => (
            <li key={`${about} ${says}`}>
              {says} {why} <span className="k-muted">({source})</span>
            </li>
          ))}
        </ul>
      )}
      {said.gaps.length > 0 && (
        <details>
          <summary>{t('counter.report.gaps', { n: said.gaps.length })}</summary>
          <ul>
            {said.gaps.map(({ about, why }, index) => (
              <li key={index}>
                {about}: {why}
              </li>
            ))}
          </ul>
        </details>
      )}
      <details>
        <summary>{t('counter.report.share')}</summary>
        <TextField
          label={t('counter.report.share')}
          labelled="heard"
          value={JSON.stringify(shareForm(reading, ENGLISH, today), null, 1)}
          onChange={() => undefined}
          lines={6}
        />
      </details>
    </div>
  );
}

type T = Words['t'];

function namedIn({ kinds, board, processors, memory, cards }: MachineReport, t: T): string {
  const filled = memory.slots.filter((slot) => slot.sizeMiB !== null);
  const named = [board.vendor, board.name].filter((name) => name !== null).join(' ');
  return [
    t('counter.report.tools', { tools: kinds.join(', ') }),
    ...(named === '' ? [] : [t('counter.report.board', { board: named })]),
    ...processors.flatMap(({ name }) => (name === null ? [] : [t('counter.report.processor', { name })])),
    ...(memory.slots.length === 0
      ? []
      : [
          t('counter.report.memory', {
            slots: memory.slots.length,
            filled: filled.map(({ locator, bank }) => locator ?? bank ?? '?').join(', ') || t('counter.report.none'),
          }),
        ]),
    ...(cards.length === 0 ? [] : [t('counter.report.cards', { n: cards.length })]),
  ].join(' ');
}

const driveSays = ({ model, health, powerOnHours, pending, reallocated }: SaidDrive, t: T): string =>
  [
    model ?? t('counter.report.drive'),
    health === null ? '' : t(`counter.report.${health}`),
    powerOnHours === null ? '' : t('counter.report.hours', { n: powerOnHours }),
    reallocated === null ? '' : t('counter.report.reallocated', { n: reallocated }),
    pending === null ? '' : t('counter.report.pending', { n: pending }),
  ]
    .filter((part) => part !== '')
    .join(', ');
