import type { Tag } from '../../../core/custody/part.ts';
import { formatTag } from '../../../core/custody/tag.ts';
import { useWords } from '../text/words.tsx';
import { useRoving } from '../useRoving.ts';
import { useSize } from '../useSize.ts';
import { type MarkLook, PLAIN_OURS } from './look.ts';
import { PartShape } from './PartShape.tsx';
import { type SilhouetteName, silhouette } from './silhouettes.ts';
import { useHatch } from './useHatch.tsx';
import './WallDrawing.css';

export type WallBin = {
  /** Its name on the wall. */
  readonly id: string;
  /** What hangs in it; null: nothing of ours belongs there. */
  readonly part: {
    /** Null for what bears none. */
    readonly tag: Tag | null;
    readonly what: string;
    readonly shape: SilhouetteName;
    /** Out: only its shadow is in the bin. */
    readonly out: boolean;
    readonly dead?: boolean;
    /** Standing with its scope; since when or by whom. Two lines, the one that asks for a hand in bold. */
    readonly lines: readonly { readonly text: string; readonly bold?: boolean }[];
  } | null;
  /** Does not answer the question asked: steps back. */
  readonly aside?: boolean;
};
export type WallDrawingProps = {
  /** Rows of bins as they hang in the shop. */
  readonly rows: readonly (readonly WallBin[])[];
  readonly chosen: string | null;
  readonly onChoose: (bin: string) => void;
};

/** The shop's bins as they hang: what is there in its shape, what is out as a shadow, four lines on each lip. */
export function WallDrawing({ rows, chosen, onChoose }: WallDrawingProps) {
  const { t } = useWords();
  const ids = rows.flat().map((bin) => bin.id);
  const roving = useRoving(
    ids,
    (from, key) => {
      if (key !== 'ArrowDown' && key !== 'ArrowUp') return undefined;
      const row = rows.findIndex((bins) => bins.some((bin) => bin.id === from));
      const column = rows[row]?.findIndex((bin) => bin.id === from) ?? 0;
      const next = rows[row + (key === 'ArrowDown' ? 1 : -1)];
      return (
        next?.[Math.min(next.length - 1, Math.round((column / Math.max(1, rows[row]?.length ?? 1)) * next.length))]
          ?.id ?? from
      );
    },
    chosen ?? undefined,
  );
  return (
    <section className="k-wall" aria-label={t('kit.wall.name')} onKeyDown={roving.onKeyDown}>
      {rows.map((bins, row) => (
        <div key={bins[0]?.id ?? row} className="k-wall-shelf">
          <ol className="k-wall-row" aria-label={t('kit.wall.row', { n: row + 1 })}>
            {bins.map((bin) => (
              <li
                key={bin.id}
                className={`k-wall-bin${bin.aside ? ' k-wall-aside' : ''}${bin.id === chosen ? ' k-wall-chosen' : ''}`}
              >
                <button
                  type="button"
                  {...roving.item(bin.id)}
                  aria-pressed={bin.id === chosen}
                  onClick={() => onChoose(bin.id)}
                >
                  <Opening bin={bin} />
                  <span className="k-wall-lip">
                    <span className="k-wall-place" aria-hidden="true">
                      {bin.id}
                    </span>
                    <span className="k-heard">{t('kit.wall.bin', { name: bin.id })}. </span>
                    {bin.part === null ? (
                      <span className="k-muted">{t('kit.wall.nothing')}</span>
                    ) : (
                      <>
                        {bin.part.tag && <b className="k-tag">{formatTag(bin.part.tag)}</b>}
                        <span>{bin.part.what}</span>
                        {bin.part.lines.map((line) => (
                          <span key={line.text} className={line.bold ? 'k-wall-bold' : 'k-muted'}>
                            {line.text}
                          </span>
                        ))}
                      </>
                    )}
                  </span>
                </button>
              </li>
            ))}
          </ol>
        </div>
      ))}
    </section>
  );
}

function Opening({ bin }: { readonly bin: WallBin }) {
  const hatch = useHatch(8, 1.1);
  const { ref, size } = useSize<HTMLSpanElement>({ width: 200, height: 102 });
  const shape = silhouette(bin.part?.shape ?? 'other');
  const scale = Math.min(1, (size.width - 24) / shape.width, (size.height - 12) / shape.height);
  const look: MarkLook = bin.part?.out
    ? { is: 'shadow' }
    : bin.part?.dead
      ? { is: 'part', whose: 'shop', standing: 'dead', known: true }
      : PLAIN_OURS;
  return (
    <span className="k-wall-opening" ref={ref}>
      <svg width={size.width} height={size.height} aria-hidden="true">
        {hatch.defs}
        {bin.part && (
          <PartShape
            name={bin.part.shape}
            x={size.width / 2}
            y={size.height / 2}
            hatch={hatch.fill}
            look={look}
            scale={scale}
          />
        )}
      </svg>
    </span>
  );
}

export type OutPart = {
  readonly tag: Tag | null;
  readonly what: string;
  readonly where: string;
  readonly bold?: string;
};

/** What is out, longest over first: the list beside the wall, since a wall cannot be hung anew. */
export function OutList({
  title,
  parts,
  onChoose,
}: {
  readonly title: string;
  readonly parts: readonly OutPart[];
  readonly onChoose: (tag: Tag | null) => void;
}) {
  return (
    <section className="k-out">
      <h2>{title}</h2>
      <ol className="k-out-list">
        {parts.map((part) => (
          <li key={`${part.tag}/${part.what}`}>
            <button type="button" onClick={() => onChoose(part.tag)}>
              <span>
                {part.tag && (
                  <>
                    <b className="k-tag">{formatTag(part.tag)}</b>,{' '}
                  </>
                )}
                {part.what}
              </span>
              <span>{part.where}</span>
              {part.bold !== undefined && <b>{part.bold}</b>}
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}
