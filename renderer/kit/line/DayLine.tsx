import type { ReactNode } from 'react';
import { formatTag } from '../../../core/custody/tag.ts';
import { useHatch } from '../mark/useHatch.tsx';
import { RuleLine } from '../plot/RuleLine.tsx';
import { textWidth } from '../text/textWidth.ts';
import { useWords } from '../text/words.tsx';
import { useRoving } from '../useRoving.ts';
import { useSize } from '../useSize.ts';
import { type DayBand, type DayJob, dayLayout, type LaidPoint, type LaidThread } from './dayLayout.ts';
import { type DayOpening, dayScale } from './dayScale.ts';
import './DayLine.css';

export type { DayJob, LaidThread } from './dayLayout.ts';
export type { DayOpening } from './dayScale.ts';
export type DayLineProps = {
  readonly now: number;
  /** Today first, then the open days up to next week. */
  readonly days: readonly DayOpening[];
  readonly jobs: readonly DayJob[];
  readonly threads: readonly LaidThread[];
  /** Second and third line under a band's name: "6 h 10 of hands". */
  readonly notes?: { readonly [band: string]: string };
  readonly chosen: string | null;
  readonly onChoose: (job: string) => void;
  /** Enter or a second press: the job at its present stage. */
  readonly onOpen: (job: string) => void;
  /** A press on a loaner's plate. */
  readonly onPart?: (tag: string) => void;
};

const RULE_Y = 70;
const HEAD = 84;

/** One line of time from today to next week; each job a point at its promise, in the band of whose move it is. */
export function DayLine({ now, days, jobs, threads, notes = {}, chosen, onChoose, onOpen, onPart }: DayLineProps) {
  const words = useWords();
  const { t } = words;
  const hatch = useHatch();
  const { ref, size } = useSize<HTMLElement>({ width: 1280, height: 640 });
  const edge = size.width > 1500 ? 40 : 32;
  const left = edge + 144;
  const hourOf = (at: number) => words.clock(at).replace(/:00$/, '');
  const today = t(days[0]?.closed ? 'kit.line.today-closed' : 'kit.line.today');
  const scale = dayScale(days, left + 74, size.width - 24, hourOf);
  const nowX = scale.at(now);
  const afterToday = (scale.days[0]?.from ?? 0) + textWidth(today, 20, 600) + 12;
  const beforeNext = (scale.days[1]?.from ?? size.width) - textWidth(words.clock(now), 18, 600) - 10;
  const nowWordX = Math.min(Math.max(nowX - 9, afterToday), beforeNext);
  const lines = (point: readonly DayJob[]): readonly [string, string] => {
    const [first] = point;
    if (!first) return ['', ''];
    if (point.length === 1)
      return [first.ninety === null ? first.name : t('kit.line.will-be-late', { name: first.name }), first.second];
    return [t('kit.line.gathered', { n: point.length, day: words.day(first.promised ?? 0) }), t('kit.line.press')];
  };
  const plateText = (thread: LaidThread) =>
    [thread.tag && formatTag(thread.tag), thread.what].filter(Boolean).join(', ');
  const layout = dayLayout(jobs, threads, scale, {
    left,
    right: size.width - 24,
    nowX,
    lanes: size.width > 1500 ? 8 : 5,
    widthOf: (point) => Math.max(textWidth(lines(point)[0], 19, 600), textWidth(lines(point)[1], 17)),
    plateWidth: (thread) => textWidth(plateText(thread), 16, 600) + 86,
  });
  const rest = Math.max(0, size.height - HEAD - layout.height - 4);
  const height = HEAD + layout.height + rest;
  const points = layout.bands.flatMap((band) => band.points.map((point) => ({ band, point })));
  const idOf = (point: LaidPoint) => point.jobs[0]?.id ?? '';
  const roving = useRoving(
    points.map(({ point }) => idOf(point)),
    (from, key) => {
      if (key !== 'ArrowDown' && key !== 'ArrowUp') return undefined;
      const here = layout.bands.findIndex((band) => band.points.some((point) => idOf(point) === from));
      const order = key === 'ArrowDown' ? layout.bands.slice(here + 1) : layout.bands.slice(0, here).reverse();
      const next = order.find((band) => band.points.length > 0)?.points[0];
      return next ? idOf(next) : from;
    },
    chosen ?? undefined,
  );
  const said = (job: DayJob) =>
    [
      job.name,
      job.second,
      job.promised === null ? t('kit.line.no-promise') : t('kit.line.promised', { when: words.dayClock(job.promised) }),
      job.ninety === null ? '' : t('kit.line.ninety', { when: words.dayClock(job.ninety) }),
    ]
      .filter((text) => text !== '')
      .join(', ');
  const bandBottom = (band: DayBand) => (band === layout.bands.at(-1) ? height : HEAD + band.top + band.height);

  return (
    <section className="k-line" ref={ref} aria-label={t('kit.line.name')}>
      <svg width={size.width} height={height} aria-hidden="true" className="k-line-svg">
        {hatch.defs}
        {layout.bands.map((band, i) => (
          <g key={band.band}>
            {i % 2 === 0 && (
              <rect
                y={HEAD + band.top}
                width={size.width}
                height={bandBottom(band) - HEAD - band.top}
                className="k-line-band"
              />
            )}
            <text x={edge} y={HEAD + band.top + 34} className="k-line-band-name">
              {t(`kit.line.band.${band.band}`)}
            </text>
            {[t(`kit.line.count.${band.band}`, { n: band.jobs }), notes[band.band]].map((note, row) =>
              note === undefined ? null : (
                <text key={note} x={edge} y={HEAD + band.top + 58 + row * 22} className="k-line-second">
                  {note}
                </text>
              ),
            )}
          </g>
        ))}
        {scale.days.map((day, i) => (
          <path
            key={day.opens}
            d={`M${i === 0 ? day.from - 16 : (scale.days[i - 1]?.to ?? 0) + 4} ${HEAD}V${height}M${day.from - 4} ${HEAD}V${height}`}
            className="k-line-fold"
          />
        ))}
        <RuleLine
          from={scale.days[0]?.from ?? 0}
          to={scale.days.at(-1)?.to ?? 0}
          at={RULE_Y}
          ticks={scale.ticks}
          labels="other"
          joints={[(scale.days[0]?.from ?? 0) - 10, ...scale.joints]}
          dotted={[[left, (scale.days[0]?.from ?? 0) - 18]]}
          gaps={scale.days.slice(1).map((day, i) => [scale.days[i]?.to ?? 0, day.from] as const)}
        />
        <text x={left} y={RULE_Y - 34} className="k-line-day">
          {t('kit.line.before')}
        </text>
        {scale.days.map((day, i) => (
          <text
            key={day.opens}
            x={day.from}
            y={RULE_Y - 34}
            className={i === 0 ? 'k-line-day k-line-today' : 'k-line-day'}
          >
            {i === 0 ? today : words.day(day.opens)}
          </text>
        ))}
        <path d={`M${nowX} ${RULE_Y - 8}V${height}`} className="k-line-now" />
        <path d={`M${nowX - 8} ${RULE_Y - 16}h16l-8 12z`} className="k-line-now-head" />
        <text x={nowWordX} y={RULE_Y - 34} className="k-line-now-word">
          {words.clock(now)}
        </text>
        <g transform={`translate(0 ${HEAD})`}>
          {layout.threads.map(({ thread, path, plate }) => (
            <g key={`${thread.waits}/${thread.what}`}>
              <path d={path} className="k-line-thread" />
              <rect x={plate.x} y={plate.y} width={plate.width} height={30} className="k-line-plate" />
              <rect x={plate.x} y={plate.y} width={plate.width} height={30} fill={hatch.fill} />
              <rect
                x={plate.x + 5}
                y={plate.y + 4}
                width={plate.width - 10}
                height={22}
                className="k-line-plate-ground"
              />
              <text x={plate.x + plate.width / 2} y={plate.y + 20.5} textAnchor="middle" className="k-line-plate-word">
                <tspan className="k-line-shop">{t('kit.mark.shop')}</tspan>
                <tspan dx={7}>{plateText(thread)}</tspan>
              </text>
              <text x={plate.x - 36} y={plate.y + 8} textAnchor="end" className="k-line-second k-line-halo">
                {thread.says}
              </text>
            </g>
          ))}
          {points.map(({ band, point }) => (
            <Point
              key={idOf(point)}
              point={point}
              lines={lines(point.jobs)}
              chosen={point.jobs.some((job) => job.id === chosen)}
              onGround={layout.bands.indexOf(band) % 2 === 1}
            />
          ))}
        </g>
      </svg>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: listens for arrows on behalf of the points inside */}
      <div onKeyDown={roving.onKeyDown}>
        {layout.bands.map((band) => (
          <section
            key={band.band}
            aria-label={`${t(`kit.line.band.${band.band}`)}, ${t(`kit.line.count.${band.band}`, { n: band.jobs })}`}
          >
            <ol className="k-line-points">
              {band.points.map((point) => {
                const id = idOf(point);
                const width = Math.max(
                  ...lines(point.jobs).map((text, i) => textWidth(text, i === 0 ? 19 : 17, i === 0 ? 600 : 400)),
                );
                const from = point.label.anchor === 'start' ? point.x - 18 : point.label.x - width;
                const to = point.label.anchor === 'start' ? point.label.x + width : point.x + 18;
                return (
                  <li key={id}>
                    <button
                      type="button"
                      {...roving.item(id)}
                      className="k-line-point"
                      style={{ left: from, top: HEAD + point.y - 26, width: to - from, height: 54 }}
                      aria-pressed={point.jobs.some((job) => job.id === chosen)}
                      aria-label={
                        point.jobs.length === 1 && point.jobs[0]
                          ? said(point.jobs[0])
                          : `${lines(point.jobs)[0]}: ${point.jobs.map((job) => job.name).join(', ')}`
                      }
                      onClick={() => {
                        const at = point.jobs.findIndex((job) => job.id === chosen);
                        const next = point.jobs[(at + 1) % point.jobs.length];
                        if (at >= 0 && point.jobs.length === 1) onOpen(id);
                        else if (next) onChoose(next.id);
                      }}
                    />
                  </li>
                );
              })}
            </ol>
          </section>
        ))}
        {layout.threads.map(({ thread, plate }) => (
          <button
            key={`${thread.waits}/${thread.what}`}
            type="button"
            className="k-line-point"
            style={{ left: plate.x, top: HEAD + plate.y - 9, width: plate.width, height: 48 }}
            aria-label={`${t('kit.mark.shop')} ${plateText(thread)}. ${thread.says}`}
            onClick={() => thread.tag && onPart?.(thread.tag)}
          />
        ))}
      </div>
    </section>
  );
}

type PointProps = {
  readonly point: LaidPoint;
  readonly lines: readonly [string, string];
  readonly chosen: boolean;
  readonly onGround: boolean;
};

function Point({ point, lines, chosen, onGround }: PointProps) {
  const { x, y, bar, label, jobs } = point;
  const away = label.anchor === 'start' && bar === null && label.x > x + 30;
  return (
    <g className={onGround ? 'k-line-on-ground' : undefined}>
      {away && <path d={`M${x + 10} ${y}H${label.x - 8}`} className="k-line-reach" />}
      {bar !== null && (
        <>
          <path d={`M${x + 11} ${y}H${bar - 2}`} className="k-line-dots" />
          <path d={`M${bar} ${y - 11}v22`} className="k-line-bar" />
        </>
      )}
      <circle cx={x} cy={y} r={bar === null ? 8.5 : 8} className={bar === null ? 'k-line-full' : 'k-line-hollow'} />
      {jobs.length > 1 && <circle cx={x} cy={y} r={12} className="k-line-many" />}
      {chosen && <circle cx={x} cy={y} r={15} className="k-line-chosen" />}
      <text x={label.x} y={y - 1} textAnchor={label.anchor} className="k-line-name k-line-halo">
        {lines[0]}
      </text>
      <text x={label.x} y={y + 20} textAnchor={label.anchor} className="k-line-second k-line-halo">
        {lines[1]}
      </text>
    </g>
  );
}

/** The foot: who it is, the one sentence for the phone, and the way to the job. */
export function DaySentence({
  who,
  says,
  children,
}: {
  readonly who: string;
  readonly says: string;
  readonly children?: ReactNode;
}) {
  const { t } = useWords();
  return (
    <>
      <div className="k-sentence-who">
        <span className="k-muted k-small">{t('kit.line.if-they-ring')}</span>
        <b>{who}</b>
      </div>
      <p className="k-sentence" role="status">
        “{says}”
      </p>
      {children}
    </>
  );
}
