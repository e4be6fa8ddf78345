import { useState } from 'react';
import type { ReckoningSheet } from '../../core/contract/reckoningSheet.ts';
import type { Calibration } from '../../core/labour/calibration/calibration.ts';
import { ChoiceKeys } from '../kit/keys/ChoiceKeys.tsx';
import { CalibrationPlot } from '../kit/plot/CalibrationPlot.tsx';
import { useWords } from '../kit/text/words.tsx';

/** With fewer jobs the sentence stands alone: a plot of them would only mislead. */
const ENOUGH_TO_DRAW = 5;
const in100 = (share: number) => Math.round(share * 100);

/** The verdict in words, its counts and range, and the plot as its proof. */
export function Estimates({ sheet }: { readonly sheet: ReckoningSheet }) {
  const { t } = useWords();
  const made = sheet.calibration.filter(({ figures }) => figures !== null);
  const [moment, setMoment] = useState<string | null>(null);
  const shown = made.find((one) => one.moment === moment) ?? made[0];
  const figures = shown?.figures;
  return (
    <div className="reckoning-part">
      <h2>
        {figures ? t(`reckoning.holds.${figures.inside.says}`, { n: figures.inside.of }) : t('reckoning.holds.none')}
      </h2>
      {made.length > 1 && (
        <ChoiceKeys
          label={t('reckoning.moment')}
          mode="one"
          choices={made.map((one) => ({ id: one.moment, says: t(`reckoning.moments.${one.moment}`) }))}
          chosen={shown ? [shown.moment] : []}
          onChoose={([next]) => next && setMoment(next)}
        />
      )}
      {figures && <Figures figures={figures} />}
      <p className="k-muted">{t('reckoning.not-scored', sheet.notScored)}</p>
    </div>
  );
}

function Figures({ figures }: { readonly figures: Calibration }) {
  const { t, number } = useWords();
  const { inside, within, bias, pinball } = figures;
  const tenth = (value: number) => number(value, 1);
  return (
    <>
      <p>
        {t('reckoning.inside', {
          count: inside.count,
          of: inside.of,
          low: in100(inside.interval.low),
          high: in100(inside.interval.high),
        })}
      </p>
      <p>
        {bias.interval
          ? t('reckoning.bias', {
              times: number(bias.times, 2),
              low: number(bias.interval.low, 2),
              high: number(bias.interval.high, 2),
            })
          : t('reckoning.bias-few', { times: number(bias.times, 2) })}
      </p>
      {inside.of >= ENOUGH_TO_DRAW && (
        <>
          <CalibrationPlot
            caption={t('reckoning.plot')}
            along={t('reckoning.along')}
            up={t('reckoning.up')}
            onDots={t('reckoning.on-dots')}
            points={within.map(({ said, count, of, share, interval }) => ({
              said: in100(said),
              done: share * 100,
              low: interval.low * 100,
              high: interval.high * 100,
              counts: t('reckoning.counts', { count, of }),
            }))}
          />
          <p className="k-muted">
            {t('reckoning.loss', {
              p10: tenth(pinball.p10),
              p50: tenth(pinball.p50),
              p90: tenth(pinball.p90),
            })}
          </p>
        </>
      )}
    </>
  );
}
