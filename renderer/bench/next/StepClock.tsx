import { type LineTick, RuleLine } from '../../kit/plot/RuleLine.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useSize } from '../../kit/useSize.ts';
import { clockOf, type Running } from './stepView.ts';
import './StepClock.css';

/** The clock of a running step: large digits and what they count; announced when a wait is over, not each second. */
export function StepClock({ running, now }: { readonly running: Running; readonly now: number }) {
  const { t, timer } = useWords();
  const { seconds, over } = clockOf(running, now);
  const says = over
    ? 'kit.step.wait-over'
    : running.phase === 'hands-on'
      ? 'kit.step.hands-on-now'
      : running.seconds === null
        ? 'kit.step.waiting-now'
        : 'kit.step.left-to-wait';
  return (
    <div className={over ? 'k-clock k-clock-over' : 'k-clock'}>
      <span className="k-clock-digits" role="timer" aria-label={`${timer(seconds)} ${t(says)}`}>
        {timer(seconds)}
      </span>
      <span className="k-clock-says" aria-hidden="true">
        {t(says)}
      </span>
      <span className="k-heard" role="status">
        {over ? t('kit.step.wait-over') : ''}
      </span>
    </div>
  );
}

/** The same time on the ruler: what is gone is filled up to the blue line. */
export function ClockRule({
  running,
  planned,
  now,
  large = false,
}: {
  readonly running: Running;
  readonly planned: number;
  readonly now: number;
  readonly large?: boolean;
}) {
  const { minutes } = useWords();
  const { ref, size } = useSize<HTMLDivElement>({ width: 600, height: 80 });
  const gone = Math.max(0, (now - running.since) / 1000) + (running.phase === 'hands-on' ? running.before : 0);
  const fixed = running.phase === 'waiting' ? running.seconds : null;
  const whole = fixed ?? Math.max(planned * 60, Math.ceil(gone / 60) * 60, 60);
  const lengthOf = (seconds: number) => 2 + Math.min(1, seconds / whole) * (size.width - 4);
  const { per, unit } = tickLengths(whole, size.width, large);
  const ticks = Array.from({ length: Math.floor(whole / unit) + 1 }, (_, i): LineTick => {
    const at = lengthOf(i * unit);
    if ((i * unit) % per !== 0) return { at, size: (i * unit) % (per / 2) === 0 ? 'middle' : 'short' };
    return {
      at,
      size: 'long',
      label: i === 0 ? '0' : minutes((i * unit) / 60),
      anchor: i === 0 ? 'start' : at > size.width - 30 ? 'end' : 'middle',
    };
  });
  return (
    <div ref={ref} className={large ? 'k-clock-rule k-clock-rule-far' : 'k-clock-rule'}>
      <svg width={size.width} height={large ? 92 : 72} aria-hidden="true">
        <rect x={2} y={10} width={lengthOf(gone) - 2} height={28} className="k-clock-gone" />
        <RuleLine from={0} to={size.width} at={38} ticks={ticks} />
        <path d={`M${lengthOf(gone)} 0V60`} className="k-clock-now" />
      </svg>
    </div>
  );
}

/** Seconds between labelled ticks and between any two, so that labels keep clear of each other. */
function tickLengths(whole: number, width: number, large: boolean): { readonly per: number; readonly unit: number } {
  const least = large ? 170 : 72;
  const steps = [
    [60, 5],
    [120, 30],
    [300, 60],
    [600, 60],
    [900, 300],
    [1800, 300],
    [3600, 900],
    [7200, 1800],
  ] as const;
  const found = steps.find(([per]) => (per / whole) * width >= least) ?? [14_400, 3600];
  return { per: found[0], unit: found[1] };
}
