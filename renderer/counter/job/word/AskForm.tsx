import { useState } from 'react';
import { DAYS_AWAY } from '../../../../core/approval/question.ts';
import { fromWall } from '../../../../core/calendar.ts';
import type { Part } from '../../../../core/custody/ledger.ts';
import { minorDigits } from '../../../../core/money/minorDigits.ts';
import type { Proposal } from '../../../../core/tracing/live/types.ts';
import { MomentField } from '../../../kit/fields/DateField.tsx';
import { TextField } from '../../../kit/fields/TextField.tsx';
import { Key } from '../../../kit/keys/Key.tsx';
import { Problem } from '../../../kit/keys/Problem.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { useExecute } from '../../../link/useExecute.ts';
import { OneOfParts } from '../../fields/OneOfParts.tsx';
import type { OfJob } from '../sheetOf.ts';
import { AnswersPut } from './AnswersPut.tsx';
import {
  type AskKind,
  freshOffer,
  type OptionSheet,
  offerInput,
  oneByOne,
  type PricedThing,
  partWithoutWord,
  questionKind,
  stopsJob,
  usualOptions,
  withOffer,
} from './askSheet.ts';
import { Figures } from './Figures.tsx';
import { OfferFields } from './OfferFields.tsx';
import { PricedThings } from './OfferLines.tsx';
import { saysFacts } from './saysFacts.ts';

const THINGS = { thing: 'counter.ask.thing', price: 'counter.ask.thing-price', add: 'counter.ask.add-thing' } as const;

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
  const { execute, problem, busy } = useExecute();
  const { currency, zone } = settings;
  const unit = 10 ** minorDigits(currency);
  const [part, setPart] = useState(() => (kind === 'part' ? partWithoutWord(sheet) : null));
  const usual = (of: Part | null) =>
    usualOptions(kind, { sheet, part: of, t, unit, ...(about && { need: about.need }) });
  const wordsFor = (of: Part | null) =>
    t(`counter.ask.says.${DAYS_AWAY.find((need) => need === about?.need) ?? kind}`, {
      ...saysFacts(sheet, currency, about, words),
      part: of?.name ?? '',
    });
  const [says, setSays] = useState(() => wordsFor(part));
  const [options, setOptions] = useState<readonly OptionSheet[]>(() => usual(part));
  const [things, setThings] = useState<readonly PricedThing[]>([]);
  const [until, setUntil] = useState('');
  const [offer, setOffer] = useState(() => freshOffer(sheet, settings));
  const given = kind === 'offer' ? offerInput(offer) : null;
  const single = things.length > 0;
  const answers = single ? oneByOne(things, options.at(-1)) : options;
  const ready =
    says.trim() !== '' &&
    answers.length > 0 &&
    answers.every((one) => one.says.trim() !== '') &&
    (kind !== 'offer' || given !== null);
  const askOf = (of: Part | null) => {
    setPart(of);
    setSays(wordsFor(of));
    setOptions(usual(of));
  };
  const put = async () => {
    const done = await execute('ask', {
      job: sheet.job.id,
      kind: questionKind(kind),
      says: says.trim(),
      options: kind === 'offer' ? withOffer(answers, offer) : [...answers],
      ...(single && { several: true }),
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
      {kind === 'part' && (
        <OneOfParts
          asks={t('counter.ask.of-part')}
          parts={sheet.parts.filter(({ belongs, place }) => belongs.to === 'owner' && place.at !== 'gone')}
          chosen={part?.id ?? null}
          onChoose={askOf}
        />
      )}
      {kind === 'part' && part?.dataBearing && <p>{t('counter.ask.data-part')}</p>}
      <TextField label={t('counter.ask.words')} labelled="above" value={says} onChange={setSays} lines={3} />
      {!single && <AnswersPut options={options} currency={currency} onChange={setOptions} />}
      {kind === 'spend' && (
        <>
          <PricedThings things={things} named={THINGS} settings={settings} onChange={setThings} />
          {single && <p className="k-muted k-small">{t('counter.ask.things-says')}</p>}
        </>
      )}
      <MomentField label={t('counter.ask.until')} value={until} onChange={setUntil} />
      <p className="k-muted k-small">{t('counter.ask.until-says', { hours: settings.rules.questionValidHours })}</p>
      <Key onPress={() => void put()} {...(ready && !busy ? {} : { whyNot: t('counter.ask.open') })}>
        {t('counter.ask.put')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </div>
  );
}
