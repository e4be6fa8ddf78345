import { type ReactNode, useLayoutEffect, useRef } from 'react';
import { RuleLine } from '../plot/RuleLine.tsx';
import { textWidth } from '../text/textWidth.ts';
import { useWords } from '../text/words.tsx';
import { useRoving } from '../useRoving.ts';
import { useSize } from '../useSize.ts';
import { type FoldedRun, quietFolds, type StripBlock, type StripEntry, stripLayout } from './stripLayout.ts';
import './Strip.css';

export type { FoldedRun, StripEntry } from './stripLayout.ts';
export type StripProps = {
  readonly entries: readonly StripEntry[];
  /** ms; null once the job is closed. */
  readonly now: number | null;
  /** Closed hours; quiet hours between entries when left out. */
  readonly folds?: readonly FoldedRun[];
  /** Sums so far: "35 min hands-on, 22 waiting". */
  readonly totals?: ReactNode;
  readonly chosen?: string;
  /** Opens an entry: its note, photographs, and striking it out. */
  readonly onChoose?: (id: string) => void;
};

/** The job's log as a band of time: full for hands-on, open for waiting, dots for the owner's word, all to one scale. */
export function Strip({ entries, now, folds, totals, chosen, onChoose }: StripProps) {
  const words = useWords();
  const { t } = words;
  const { ref, size } = useSize<HTMLElement>({ width: 1280, height: 150 });
  const scroller = useRef<HTMLDivElement>(null);
  const large = size.width > 1500;
  const edge = large ? 40 : 24;
  const type = large ? 18 : 16;
  const height = Math.max(136, size.height - 2);
  // Under the line: the hours, and below them what time it is now, clear of the entries' names.
  const base = height - (large ? 78 : 60);
  const block = large ? 34 : 28;
  const layout = stripLayout(entries, folds ?? quietFolds(entries, 60, now), now, {
    pxPerMinute: large ? 19.2 : 12.4,
    label: words.clock,
    widthOf: (text) => textWidth(text, type),
  });
  const width = Math.max(size.width - edge * 2, layout.width + 110);
  const nowX = layout.now;
  const end = nowX ?? layout.width;

  useLayoutEffect(() => {
    const box = scroller.current;
    if (box) box.scrollLeft = Math.max(0, end + 160 - box.clientWidth);
  }, [end]);

  const said = ({ entry }: StripBlock) => {
    const parts = [
      words.clock(entry.at),
      entry.label,
      t('kit.strip.minutes', { hands: entry.handsOn, waiting: entry.waiting }),
    ];
    if (entry.struck) parts.push(t('kit.strip.struck'));
    if (entry.ownersWord !== undefined) parts.push(entry.ownersWord);
    if (entry.note !== undefined) parts.push(entry.note);
    if (entry.photographs) parts.push(t('kit.strip.photographs', { n: entry.photographs }));
    return parts.join(', ');
  };
  const roving = useRoving(
    layout.blocks.map((one) => one.entry.id),
    undefined,
    chosen ?? layout.blocks.at(-1)?.entry.id,
  );
  return (
    <section className="k-strip" ref={ref} aria-label={t('kit.strip.name')}>
      <div className="k-strip-totals" style={{ right: edge }}>
        {totals}
      </div>
      <div className="k-strip-scroll" ref={scroller}>
        <div style={{ position: 'relative', width: width + edge * 2, height }}>
          <svg width={width + edge * 2} height={height} aria-hidden="true">
            <g transform={`translate(${edge} 0)`}>
              {layout.blocks.map((one) =>
                one.row === 1 ? (
                  <path
                    key={one.entry.id}
                    d={`M${one.x + 0.75} ${base - block - 10 - type - 19}V${base - block}`}
                    className="k-strip-stem"
                  />
                ) : null,
              )}
              {layout.blocks.map((one) => (
                <Block
                  key={one.entry.id}
                  block={one}
                  base={base}
                  height={block}
                  type={type}
                  chosen={one.entry.id === chosen}
                  photographs={large}
                />
              ))}
              <RuleLine
                from={0}
                to={Math.max(layout.width, width)}
                at={base}
                ticks={layout.ticks}
                joints={layout.joints}
                gaps={layout.joints.map((joint) => [joint - 12, joint + 12] as const)}
              />
              {nowX !== null && now !== null && (
                <>
                  <path d={`M${nowX} ${base + (large ? 66 : 50)}V${base - block}`} className="k-strip-now" />
                  <text x={nowX + 8} y={base + (large ? 64 : 48)} className="k-strip-now-word">
                    {t('kit.strip.now', { time: words.clock(now) })}
                  </text>
                </>
              )}
            </g>
          </svg>
          <ol className="k-strip-entries" onKeyDown={roving.onKeyDown}>
            {layout.blocks.map((one) => {
              const box = {
                left: edge + one.x,
                top: base - block - 8,
                width: Math.max(24, one.hands + one.waits),
                height: Math.max(48, block + 16),
              };
              return (
                <li key={one.entry.id}>
                  {onChoose ? (
                    <button
                      type="button"
                      {...roving.item(one.entry.id)}
                      className="k-strip-entry"
                      style={box}
                      title={one.row === null ? one.entry.label : undefined}
                      aria-label={said(one)}
                      aria-pressed={one.entry.id === chosen}
                      onClick={() => onChoose(one.entry.id)}
                    />
                  ) : (
                    <span className="k-heard">{said(one)}</span>
                  )}
                </li>
              );
            })}
          </ol>
        </div>
      </div>
    </section>
  );
}

type BlockProps = {
  readonly block: StripBlock;
  readonly base: number;
  readonly height: number;
  readonly type: number;
  readonly chosen: boolean;
  readonly photographs: boolean;
};

function Block({ block, base, height, type, chosen, photographs }: BlockProps) {
  const { number } = useWords();
  const { entry, x, hands, waits, row, labelX } = block;
  const top = base - height;
  const labelY = top - 10 - (row === 1 ? type + 7 : 0);
  const figure = number(Math.round(entry.handsOn));
  return (
    <g>
      {chosen && (
        <rect x={x - 4} y={top - 4} width={hands + waits + 8} height={height + 4} className="k-strip-chosen" />
      )}
      {waits > 0 && entry.ownersWord === undefined && (
        <rect
          x={x + hands}
          y={top + 0.75}
          width={Math.max(0, waits - 0.75)}
          height={height - 0.75}
          className="k-strip-waits"
        />
      )}
      {waits > 0 && entry.ownersWord !== undefined && (
        <>
          <rect
            x={x + hands + 1}
            y={top + 1}
            width={Math.max(0, waits - 2)}
            height={height - 1}
            className="k-strip-word"
          />
          {textWidth(entry.ownersWord, type - 1) + 12 < waits && (
            <text x={x + hands + waits / 2} y={top + height / 2 + 5.5} textAnchor="middle" fontSize={type - 1}>
              {entry.ownersWord}
            </text>
          )}
        </>
      )}
      <rect x={x} y={top} width={hands} height={height} className="k-strip-hands" />
      {hands > textWidth(figure, type, 600) + 10 && (
        <text x={x + 8} y={top + height / 2 + 6} fontSize={type} className="k-strip-figure">
          {figure}
        </text>
      )}
      {row !== null && (
        <text
          x={labelX}
          y={labelY}
          fontSize={type}
          className={entry.struck ? 'k-strip-label k-strip-struck' : 'k-strip-label'}
        >
          {entry.label}
        </text>
      )}
      {photographs &&
        Array.from({ length: Math.min(3, entry.photographs ?? 0) }, (_, i) => (
          <g key={i} transform={`translate(${x + 6 + i * 21} ${base + 36})`} className="k-strip-photograph">
            <rect width={17} height={13} />
            <circle cx={8.5} cy={6.5} r={3.4} />
          </g>
        ))}
    </g>
  );
}
