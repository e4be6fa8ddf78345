import { useState } from 'react';
import { Ask } from '../keys/Ask.tsx';
import { Key } from '../keys/Key.tsx';
import { lineCount, textWidth } from '../text/textWidth.ts';
import { useWords } from '../text/words.tsx';
import { useSize } from '../useSize.ts';
import { type LadderSuspect, ladderLayout } from './ladderLayout.ts';
import { RUNGS } from './scale.ts';
import './Ladder.css';

export type { LadderSuspect } from './ladderLayout.ts';
export type LadderProps = {
  readonly suspects: readonly LadderSuspect[];
  /** The last move, traced for this suspect alone: from this chance to where it stands now. */
  readonly moved?: { readonly id: string; readonly from: number };
  /** Makes each name a key. */
  readonly onChoose?: (id: string) => void;
  /** As a table instead of rails: narrow windows, or on demand. */
  readonly asTable?: boolean;
};

const RUNG_WORDS = ['1-in-100', '1-in-20', '1-in-5', 'even', '4-in-5', '19-in-20', '99-in-100'] as const;

/** Suspects on fixed rails of odds: they climb and fall as the log grows, and are never put in another order. */
export function Ladder({ suspects, moved, onChoose, asTable = false }: LadderProps) {
  const { t } = useWords();
  const { ref, size } = useSize<HTMLDivElement>({ width: 206, height: 590 });
  const [listOpen, setListOpen] = useState(false);
  if (asTable) return <SuspectTable suspects={suspects} {...(onChoose ? { onChoose } : {})} />;

  const wide = size.width > 240;
  const odds = RUNG_WORDS.map((rung) => t(`kit.ladder.rung.${rung}`));
  const rail = Math.max(wide ? 104 : 82, Math.max(...odds.map((word) => textWidth(word, 16))) + 16);
  const railTo = rail + (wide ? 30 : 24);
  const middle = (rail + railTo) / 2;
  const labelX = railTo + 20;
  const room = size.width - labelX - 6;
  const lines = (suspect: LadderSuspect) =>
    lineCount(suspect.name, suspect.asked ? 20 : 17, suspect.asked ? 700 : 400, room);
  const top = 44;
  const foot = Math.max(top + 200, size.height - 58);
  const { y, points, lower } = ladderLayout(suspects, top, foot, (suspect) =>
    lines(suspect) > 1 ? lines(suspect) * 19 + 2 : 23,
  );
  const foots = lower.length > 0 ? t('kit.ladder.lower', { n: lower.length }) : t('kit.ladder.all');
  const mover = moved && points.find((point) => point.suspect.id === moved.id);
  return (
    <section className="k-ladder" ref={ref} aria-label={t('kit.ladder.name')}>
      <svg width={size.width} height={size.height} aria-hidden="true">
        <path d={`M${rail} ${top - 14}V${foot + 18}M${railTo} ${top - 14}V${foot + 18}`} className="k-ladder-rails" />
        {RUNGS.map((rung, i) => (
          <g key={rung}>
            <path d={`M${rail} ${y(rung)}H${railTo}`} className="k-ladder-rung" />
            <text x={rail - 12} y={y(rung) + 5.5} textAnchor="end" className="k-ladder-odds">
              {odds[i]}
            </text>
          </g>
        ))}
        {points.map((point) => (
          <path
            key={point.suspect.id}
            d={`M${middle} ${point.y}H${railTo + 4}L${railTo + 14} ${point.labelY}`}
            className={point.suspect.asked ? 'k-ladder-lead k-ladder-asked' : 'k-ladder-lead'}
          />
        ))}
        {mover && moved && Math.abs(y(moved.from) - mover.y) > 3 && (
          <g key={`${moved.id}${moved.from}${mover.y}`}>
            <path d={`M${middle} ${y(moved.from)}V${mover.y}`} pathLength={1} className="k-ladder-trace" />
            <circle cx={middle} cy={y(moved.from)} r={5} className="k-ladder-from" />
          </g>
        )}
        {[...points]
          .sort((a, b) => Number(a.suspect.asked ?? false) - Number(b.suspect.asked ?? false))
          .map((point) => (
            <circle
              key={point.suspect.id}
              cx={middle}
              cy={point.y}
              r={point.suspect.asked ? 9 : 6.5}
              className={point.suspect.asked ? 'k-ladder-point k-ladder-asked' : 'k-ladder-point'}
            />
          ))}
      </svg>
      {points.map(({ suspect, labelY }) => {
        const className = `k-ladder-name${suspect.asked ? ' k-ladder-name-asked' : ''}`;
        const style = { left: labelX, top: labelY, maxWidth: room };
        return onChoose ? (
          <button
            key={suspect.id}
            type="button"
            className={className}
            style={style}
            onClick={() => onChoose(suspect.id)}
            tabIndex={-1}
            aria-hidden="true"
          >
            {suspect.name}
          </button>
        ) : (
          <span key={suspect.id} className={className} style={style} aria-hidden="true">
            {suspect.name}
          </span>
        );
      })}
      <div
        className="k-ladder-foot"
        style={{ left: Math.max(4, Math.min(labelX - 2, size.width - textWidth(foots, 16) - 8)) }}
      >
        <button type="button" className="k-ladder-lower" onClick={() => setListOpen(true)}>
          {foots}
        </button>
      </div>
      <div className="k-heard">
        <SuspectTable suspects={suspects.filter((suspect) => suspect.chance >= 0.01)} />
      </div>
      <Ask
        open={listOpen}
        title={t('kit.ladder.list')}
        onClose={() => setListOpen(false)}
        light
        keys={<Key onPress={() => setListOpen(false)}>{t('kit.close')}</Key>}
      >
        <SuspectTable
          suspects={suspects}
          {...(onChoose
            ? {
                onChoose: (id: string) => {
                  setListOpen(false);
                  onChoose(id);
                },
              }
            : {})}
        />
      </Ask>
    </section>
  );
}

/** The same in a table, in the order given. */
function SuspectTable({
  suspects,
  onChoose,
}: {
  readonly suspects: readonly LadderSuspect[];
  readonly onChoose?: (id: string) => void;
}) {
  const { t, odds } = useWords();
  return (
    <table className="k-ladder-table">
      <caption className="k-heard">{t('kit.ladder.name')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('kit.ladder.suspect')}</th>
          <th scope="col">{t('kit.ladder.odds')}</th>
        </tr>
      </thead>
      <tbody>
        {suspects.map((suspect) => (
          <tr key={suspect.id}>
            <th scope="row">
              {onChoose ? (
                <button type="button" className="k-ladder-row" onClick={() => onChoose(suspect.id)}>
                  {suspect.name}
                </button>
              ) : (
                suspect.name
              )}
              {suspect.asked && <span className="k-muted">{` ${t('kit.ladder.asked')}`}</span>}
            </th>
            <td>{odds(suspect.chance)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
