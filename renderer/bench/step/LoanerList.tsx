import type { WallSheet } from '../../../core/contract/screens.ts';
import { type Loaners, loaners, type StockPart } from '../../../core/fit/loaners.ts';
import type { MachineView } from '../../../core/fit/machineView.ts';
import type { Fit } from '../../../core/fit/reason.ts';
import type { JobId } from '../../../core/ids.ts';
import { epochMs } from '../../../core/time.ts';
import { useWords } from '../../kit/text/words.tsx';
import { decides, groundWords } from '../../terms/fitWords.ts';
import { standingWords, type WallPart, whereWords } from '../../terms/wallRows.ts';

export type LoanerSought = {
  readonly kind: WallPart['kind'];
  /** The slot that was chosen; null: any it goes into. */
  readonly slot: string | null;
  readonly suspects: ReadonlySet<WallPart['kind']>;
  readonly job: JobId;
};

/** Ours of the kind a step borrows, the one to take first on top, those that would answer nothing at the end. */
export function loanersFor(
  { kind, slot, suspects, job }: LoanerSought,
  machine: MachineView,
  wall: WallSheet,
): Loaners {
  const stock = wall.parts.map((part): StockPart => {
    const worth = part.attributes.valueMinor;
    return {
      part,
      in: part.place.at === 'bin' || part.place.at === 'rig' || part.place.at === 'bench',
      reservedFor: part.reservedFor,
      worthMinor: typeof worth === 'number' ? worth : null,
    };
  });
  return loaners(
    { kind, slot, scope: 'starts', suspects: [...suspects], job, at: epochMs(Date.now()) },
    machine,
    stock,
  );
}

type LoanerListProps = { readonly found: Loaners; readonly wall: WallSheet };

/** Each of ours with what is said for and against it in this machine, in words. */
export function LoanerList({ found, wall }: LoanerListProps) {
  const words = useWords();
  const { t } = words;
  const onWall = (id: string) => wall.parts.find((part) => part.id === id);
  const rows = [
    ...found.offered.map(({ stock, fit, free }) => ({ part: onWall(stock.part.id), fit, free, why: null })),
    ...found.leftOut.map(({ stock, fit, why }) => ({ part: onWall(stock.part.id), fit, free: true, why })),
  ];
  if (rows.length === 0) return null;
  return (
    <ol className="bench-plain bench-loaners" aria-label={t('bench.ours-for-it')}>
      {rows.map(
        ({ part, fit, free, why }) =>
          part && (
            <li key={part.id}>
              <b>{[part.tag, part.name].filter(Boolean).join(' ')}</b>, {standingWords(part, words)}.{' '}
              {fit && t(`fits.is.${fit.fits}`)}{' '}
              {why !== null && t(`bench.left-out.${why}`, { standing: standingWords(part, words) })}
              {!free && t('bench.not-free', { where: whereWords(part, words) })}
              {fit && <Grounds fit={fit} />}
            </li>
          ),
      )}
    </ol>
  );
}

/** What decides in sight, every ground under its fold. */
function Grounds({ fit }: { readonly fit: Fit }) {
  const words = useWords();
  const deciding = decides(fit);
  return (
    <>
      {deciding.length > 0 && (
        <ul>
          {deciding.map((reason) => (
            <li key={reason.fact}>{groundWords(reason, words)}</li>
          ))}
        </ul>
      )}
      <details>
        <summary>{words.t('bench.all-grounds', { n: fit.reasons.length })}</summary>
        <ul>
          {fit.reasons.map((reason) => (
            <li key={JSON.stringify(reason)}>{groundWords(reason, words)}</li>
          ))}
        </ul>
      </details>
    </>
  );
}
