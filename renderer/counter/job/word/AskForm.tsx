import { useState } from 'react';
import { fromWall } from '../../../../core/job/wallTime.ts';
import { minorDigits } from '../../../../core/money/minorDigits.ts';
import type { Proposal } from '../../../../core/tracing/live/types.ts';
import { AmountField } from '../../../kit/fields/AmountField.tsx';
import { MomentField } from '../../../kit/fields/DateField.tsx';
import { TextField } from '../../../kit/fields/TextField.tsx';
import { Key } from '../../../kit/keys/Key.tsx';
import { Problem } from '../../../kit/keys/Problem.tsx';
import { useWords } from '../../../kit/words.tsx';
import { useDoes } from '../../../link/does.ts';
import type { OfJob } from '../sheetOf.ts';
import {
  type AskKind,
  freshOffer,
  type OptionSheet,
  offerInput,
  questionKind,
  stopsJob,
  usualOptions,
  withOffer,
} from './askSheet.ts';
import { Figures } from './Figures.tsx';
import { OfferFields } from './OfferFields.tsx';
import { saysFacts } from './saysFacts.ts';

/** A question as it is put: its figures, its words, its answers, how long it holds; for an offer the part as well. */
export function AskForm({
  kind,
  about,
  sheet,
  settings,
  onDone,
}: OfJob & {
  readonly kind: AskKind;
  /** The step that takes days, where the question is about one. */
  readonly about?: Proposal;
  readonly onDone: () => void;
}) {
  const words = useWords();
  const { t } = words;
  const { does, problem, busy } = useDoes();
  const { currency, zone } = settings;
  const unit = 10 ** minorDigits(currency);
  const [says, setSays] = useState(() =>
    t(`counter.ask.says.${about?.need ?? kind}`, saysFacts(sheet, currency, about, words)),
  );
  const [options, setOptions] = useState<readonly OptionSheet[]>(() =>
    usualOptions(kind, { sheet, t, unit, ...(about && { need: about.need }) }),
  );
  const [until, setUntil] = useState('');
  const [offer, setOffer] = useState(() => freshOffer(sheet, settings));
  const given = kind === 'offer' ? offerInput(offer) : null;
  const ready = says.trim() !== '' && options.every((one) => one.says.trim() !== '') && (kind !== 'offer' || given);
  const change = (id: string, patch: Partial<OptionSheet>) =>
    setOptions(options.map((one) => (one.id === id ? { ...one, ...patch } : one)));
  const put = async () => {
    const done = await does('ask', {
      job: sheet.job.id,
      kind: questionKind(kind),
      says: says.trim(),
      options: kind === 'offer' ? withOffer(options, offer) : [...options],
      validUntil: until === '' ? null : fromWall(until, zone),
      offer: given,
      stops: stopsJob(kind),
    });
    if (done) onDone();
  };
  return (
    <div className="counter-block counter-stack">
      <Figures sheet={sheet} settings={settings} />
      {kind === 'offer' && <OfferFields sheet={sheet} settings={settings} offer={offer} onChange={setOffer} />}
      <TextField label={t('counter.ask.words')} labelled="above" value={says} onChange={setSays} lines={3} />
      {options.map((option, at) => (
        <div key={option.id} className="counter-fields">
          <TextField
            label={t('counter.ask.option', { n: at + 1 })}
            labelled="above"
            value={option.says}
            onChange={(text) => change(option.id, { says: text })}
            chars={44}
          />
          {option.agrees.limitMinor !== null && (
            <AmountField
              label={t('counter.ask.limit', { n: at + 1 })}
              labelled="above"
              currency={currency}
              minor={option.agrees.limitMinor}
              onChange={(minor) => change(option.id, { agrees: { ...option.agrees, limitMinor: minor ?? 0 } })}
            />
          )}
        </div>
      ))}
      <MomentField label={t('counter.ask.until')} value={until} onChange={setUntil} />
      <p className="k-muted k-small">{t('counter.ask.until-says', { hours: settings.rules.questionValidHours })}</p>
      <Key onPress={() => void put()} {...(ready && !busy ? {} : { whyNot: t('counter.ask.open') })}>
        {t('counter.ask.put')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </div>
  );
}
