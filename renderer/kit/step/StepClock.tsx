import { RuleLine } from '../rule/RuleLine.tsx';
import { useSize } from '../useSize.ts';
import { useWords } from '../words.tsx';
import { clockOf, type Running } from './stepView.ts';
import './StepClock.css';

/** The clock of a running step: large digits and what they count; announced when a wait is over, not each second. */
export function StepClock({ running, now }: { readonly running: Running; readonly now: number }) {
  const { t, timer } = useWords();
  const { seconds, over } = clockOf(running, now);
  const says = over
    ? 'kit.step.wait-over'
    : running.phase === 'waiting'
      ? 'kit.step.left-to-wait'
      : 'kit.step.hands-on-now';
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
  const whole = running.phase === 'waiting' ? running.seconds : Math.max(planned * 60, Math.ceil(gone / 60) * 60, 60);
  const lengthOf = (seconds: number) => 2 + Math.min(1, seconds / whole) * (size.width - 4);
  const per = whole <= 180 ? 60 : whole <= 900 ? 300 : whole <= 3600 ? 900 : 3600;
  const unit = per / (per === 60 ? 12 : 5);
  const ticks = Array.from({ length: Math.floor(whole / unit) + 1 }, (_, i) => {
    const long = (i * unit) % per === 0;
    const at = lengthOf(i * unit);
    return {
      at,
      size: long ? ('long' as const) : per === 60 && i % 6 === 0 ? ('middle' as const) : ('short' as const),
      ...(long
        ? {
            label: i === 0 ? '0' : minutes((i * unit) / 60),
            anchor: i === 0 ? ('start' as const) : at > size.width - 30 ? ('end' as const) : ('middle' as const),
          }
        : {}),
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
