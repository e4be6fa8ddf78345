import { type Estimate, newestFigures } from '../../../../core/job/estimate.ts';
import { EstimateLine } from '../../../kit/plot/EstimateLine.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { driverWords } from '../../driverWords.ts';
import type { OfJob } from '../sheetOf.ts';

/** What was said at first and what is to be said now, with what is spent and the limit that holds. */
export function Figures({ sheet, settings }: OfJob) {
  const { t, moneyShort, odds } = useWords();
  const { estimates, limitMinor } = sheet.job;
  const [first] = newestFigures(estimates);
  const now = estimates.at(-1);
  const money = (minor: number) => moneyShort({ minor: Math.round(minor), currency: settings.currency });
  const line = (estimate: Estimate) => [
    t('counter.figures.minutes', { p50: Math.round(estimate.handsOn.p50), p90: Math.round(estimate.handsOn.p90) }),
    t('counter.figures.money', { p50: money(estimate.price.p50), p90: money(estimate.price.p90) }),
    estimate.withPart
      ? t('counter.figures.money', { p50: money(estimate.withPart.p50), p90: money(estimate.withPart.p90) })
      : '–',
    odds(estimate.passesLimit),
  ];
  if (!first || !now) return <p className="k-muted">{t('counter.figures.none')}</p>;
  const rows =
    now === first
      ? [{ id: 'now' as const, of: now }]
      : [
          { id: 'then' as const, of: first },
          { id: 'now' as const, of: now },
        ];
  return (
    <>
      <table className="counter-table">
        <caption className="k-heard">{t('counter.figures.title')}</caption>
        <thead>
          <tr>
            <td />
            {(['hands', 'work', 'with-part', 'passes'] as const).map((id) => (
              <th key={id} scope="col">
                {t(`counter.figures.${id}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">{t(`counter.figures.${row.id}`)}</th>
              {line(row.of).map((cell, at) => (
                <td key={`${row.id}${at}`}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <EstimateLine estimate={now} computing={sheet.computing} />
      {now.drivers.length > 0 && <p>{t('counter.figures.hangs-on', { what: driverWords(now.drivers) })}</p>}
      <p>{t('counter.figures.spent', { spent: money(sheet.charges.totalMinor), limit: money(limitMinor) })}</p>
    </>
  );
}
