import type { Estimate } from '../../../core/job/estimate.ts';
import type { EstimatePolicy } from '../../../core/labour/types.ts';
import { useWords } from '../text/words.tsx';
import './EstimateLine.css';

export type EstimateLineProps = {
  /** The newest one; undefined while there is none. */
  readonly estimate: Pick<Estimate, 'handsOn' | 'policy' | 'paths' | 'planned' | 'error'> | undefined;
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
  const { planned, handsOn, paths, error } = estimate;
  if (!planned) return null;
  const difference = Math.round(handsOn.p50 - planned.p50);
  const facts = {
    runs: paths,
    n: Math.abs(difference),
    // Two figures of independent errors: the error of their difference, at 95 %.
    error: Math.ceil(1.96 * Math.hypot(planned.error ?? 0, error ?? 0)),
  };
  const says = difference === 0 ? 'same' : difference > 0 ? 'longer' : 'shorter';
  return <span className="k-muted">{t(`kit.estimate.planned.${says}`, facts)}</span>;
}
