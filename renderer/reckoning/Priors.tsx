import type { ReckoningSheet } from '../../core/contract/reckoningSheet.ts';
import type { IdOf } from '../catalogue.ts';
import { IntervalRows } from '../kit/plot/IntervalRows.tsx';
import { PlotLegend } from '../kit/plot/PlotLegend.tsx';
import { useWords } from '../kit/text/words.tsx';
import { faultName } from '../terms/terms.ts';

/** Lines of faults that the shop's own jobs speak for; what only sinks because others rise is left to the command line. */
const MOST = 10;

/** What closed jobs make of how often each fault is met, never without the jobs left out. */
export function Priors({ sheet }: { readonly sheet: ReckoningSheet }) {
  const { t } = useWords();
  const { moved, tally, takenOver } = sheet.priors;
  const { thoughts } = sheet;
  const rows = moved.filter((one) => one.jobs > 0).slice(0, MOST);
  const head = (which: IdOf<'reckoning.prior-heads'>) => t(`reckoning.prior-heads.${which}`);
  return (
    <section className="reckoning-part" aria-labelledby="reckoning-priors">
      <h2 id="reckoning-priors">{t('reckoning.priors')}</h2>
      <p className="k-muted">{t(rows.length === 0 ? 'reckoning.priors-none' : 'reckoning.priors-says')}</p>
      <p>{t('reckoning.excluded', { counted: tally.counted, ...tally.excluded })}</p>
      {rows.length > 0 && (
        <IntervalRows
          caption={t('reckoning.priors')}
          heads={[head('fault'), head('range'), head('others'), head('counts'), head('verdict')]}
          unit={t('reckoning.in-100')}
          rows={rows.map((one) => ({
            id: `${one.group} ${one.fault}`,
            name: faultName(one.fault),
            second: t('reckoning.of-group', { group: t(`counter.groups.${one.group}`) }),
            here: one.now * 100,
            low: one.interval.low * 100,
            high: one.interval.high * 100,
            others: one.stated * 100,
            counts: t('reckoning.of-jobs', { jobs: one.jobs, of: one.of }),
            verdict: t(`reckoning.prior-verdict.${one.says}`),
            bold: one.says !== 'too-few-to-say',
          }))}
          legend={
            <PlotLegend
              point={t('reckoning.legend.point')}
              diamond={t('reckoning.legend.diamond')}
              whisker={t('reckoning.legend.whisker')}
            />
          }
        />
      )}
      {thoughts.scored + thoughts.open > 0 && <p>{t('reckoning.thoughts', thoughts)}</p>}
      <p className="k-muted">
        {takenOver === null ? t('reckoning.priors-stated') : t('reckoning.priors-taken', { n: takenOver })}
      </p>
    </section>
  );
}
