import { differenceInterval } from '../../../core/figures/differenceInterval.ts';
import type { Estimate } from '../../../core/job/estimate.ts';
import type { EstimatePolicy } from '../../../core/labour/types.ts';
import { useWords } from '../text/words.tsx';
import './EstimateLine.css';

export type EstimateLineProps = {
  /** The newest one; undefined while there is none. */
  readonly estimate: Pick<Estimate, 'handsOn' | 'policy' | 'paths' | 'planned' | 'medianBetween'> | undefined;
  /** What is being computed; null when the figure stands. */
  readonly computing: EstimatePolicy | null;
};

/** Hands-on minutes of the whole, by which policy they were reckoned, how far that is from the plan's, and what is still coming. */
export function EstimateLine({ estimate, computing }: EstimateLineProps) {
  const { t } = useWords();
  if (!estimate && computing === null) return null;
  const whole = (minutes: number) => Math.round(minutes);
  return (
    <p className="k-estimate k-small">
      <span className="k-muted">{t('kit.estimate.label')}</span>
      {estimate && (
        <>
          <b>{t('kit.estimate.says', { p50: whole(estimate.handsOn.p50), p90: whole(estimate.handsOn.p90) })}</b>
          {estimate.policy !== 'none' && <span>{t(`kit.estimate.policy.${estimate.policy}`)}</span>}
          {estimate.planned && <AgainstPlan estimate={estimate} />}
        </>
      )}
      {computing !== null && (
        <span role="status" className="k-muted">
          {t(`kit.estimate.computing.${computing}`)}
        </span>
      )}
    </p>
  );
}

function AgainstPlan({ estimate }: { readonly estimate: NonNullable<EstimateLineProps['estimate']> }) {
  const { t } = useWords();
  const { planned, handsOn, paths, medianBetween } = estimate;
  // Older figures do not say how sure they are: nothing is said of how far two of them are apart.
  if (!planned?.medianBetween || !medianBetween) return null;
  const between = differenceInterval(
    { figure: handsOn.p50, between: medianBetween },
    { figure: planned.p50, between: planned.medianBetween },
  );
  const exact = handsOn.p50 - planned.p50;
  const difference = Math.round(handsOn.p50 - planned.p50);
  const facts = {
    runs: paths,
    n: Math.abs(difference),
    error: Math.ceil(Math.max(between.high - exact, exact - between.low)),
  };
  const says = difference === 0 ? 'same' : difference > 0 ? 'longer' : 'shorter';
  return <span className="k-muted">{t(`kit.estimate.planned.${says}`, facts)}</span>;
}
