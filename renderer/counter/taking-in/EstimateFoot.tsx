import type { FirstEstimate } from '../../../core/contract/contract.ts';
import type { ShopSettings } from '../../../core/job/shop.ts';
import { minorDigits } from '../../../core/money/minorDigits.ts';
import { countableStep } from '../../../core/papers/ruler.ts';
import { Rule } from '../../kit/plot/Rule.tsx';
import { useWords } from '../../kit/text/words.tsx';

/** What it may cost, on a money ruler: thick from one in ten to half, dots to nine in ten, the limit in blue. */
export function EstimateFoot({
  estimate,
  limitMinor,
  settings,
}: {
  readonly estimate: FirstEstimate | null;
  readonly limitMinor: number | null;
  readonly settings: ShopSettings;
}) {
  const { t, moneyShort, odds, number, day } = useWords();
  const { currency } = settings;
  if (!estimate) return <p className="counter-foot-waits k-muted">{t('counter.foot.waits')}</p>;
  const unit = 10 ** minorDigits(currency);
  const short = (minor: number) => moneyShort({ minor: Math.round(minor / unit) * unit, currency });
  const low = estimate.p10 * settings.perMinuteMinor;
  const most = Math.max(estimate.priceP90, limitMinor ?? 0) / unit;
  const step = countableStep(most * 1.1, 6);
  const to = Math.ceil((most * 1.1) / step) * step;
  const between = { from: short(low), to: short(estimate.priceP50) };
  return (
    <div className="counter-foot-estimate">
      <div className="counter-foot-says">
        <b>{t('counter.foot.likely', between)}</b>
        <span className="k-muted k-small">{t('counter.foot.nine-in-ten', { most: short(estimate.priceP90) })}</span>
        {estimate.firstFigure && <span className="k-muted k-small">{t('counter.foot.first-figure')}</span>}
        {estimate.day !== null && (
          <span className="k-muted k-small">{t('counter.foot.day', { day: day(estimate.day) })}</span>
        )}
        {limitMinor !== null && (
          <span className="k-muted k-small">{t('counter.foot.passes', { odds: odds(estimate.passesLimit) })}</span>
        )}
      </div>
      <Rule
        label={t('counter.foot.scale')}
        from={0}
        to={to}
        length={246}
        figure={(value) => number(value)}
        ranges={[
          { from: low / unit, to: estimate.priceP50 / unit, kind: 'thick', says: t('counter.foot.likely', between) },
          {
            from: estimate.priceP50 / unit,
            to: estimate.priceP90 / unit,
            kind: 'dots',
            says: t('counter.foot.nine-in-ten', { most: short(estimate.priceP90) }),
          },
        ]}
        {...(limitMinor === null
          ? {}
          : {
              limit: {
                at: limitMinor / unit,
                label: t('counter.foot.limit'),
                says: t('counter.foot.limit-is', { limit: short(limitMinor) }),
              },
            })}
      />
    </div>
  );
}
