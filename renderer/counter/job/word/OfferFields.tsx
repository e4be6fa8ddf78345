import { useQuery } from '@tanstack/react-query';
import { formatTag } from '../../../../core/custody/tag.ts';
import { AmountField } from '../../../kit/fields/AmountField.tsx';
import { NumberField } from '../../../kit/fields/NumberField.tsx';
import { TextField } from '../../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../../kit/keys/ChoiceKeys.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { wallRead } from '../../../link/reads.ts';
import { OneOf } from '../../fields/OneOf.tsx';
import type { OfJob } from '../sheetOf.ts';
import type { OfferSheet } from './askSheet.ts';
import { OfferComparison } from './OfferComparison.tsx';
import { AfterwardsFields, PricedThings } from './OfferLines.tsx';

const CONDITIONS = ['new', 'used', 'refurbished'] as const;
const EXTRAS = {
  thing: 'counter.offer.extra',
  price: 'counter.offer.extra-price',
  add: 'counter.offer.add-extra',
} as const;
const OLD_PART = ['back', 'keep', 'scrap', 'send'] as const;

/** The part on offer: for which of the owner's, which of ours, and all that must be disclosed. */
export function OfferFields({
  sheet,
  settings,
  offer,
  onChange,
}: OfJob & { readonly offer: OfferSheet; readonly onChange: (offer: OfferSheet) => void }) {
  const { t } = useWords();
  const wall = useQuery(wallRead());
  const { currency, tax } = settings;
  const others = (tax.others ?? []).filter((permille) => permille !== tax.permille);
  const change = (patch: Partial<OfferSheet>) => onChange({ ...offer, ...patch });
  const theirs = sheet.parts.filter((part) => part.belongs.to === 'owner');
  const had = theirs.find((part) => part.id === offer.forPart) ?? null;
  const ours = (wall.data?.parts ?? []).filter(
    (part) =>
      had !== null &&
      part.kind === had.kind &&
      part.belongs.to === 'shop' &&
      part.standing.is !== 'dead' &&
      (part.reservedFor === null || part.reservedFor === sheet.job.id),
  );
  const offered = ours.find((part) => part.id === offer.part) ?? null;
  return (
    <>
      <p className="counter-asks">{t('counter.offer.for-part')}</p>
      <ChoiceKeys
        label={t('counter.offer.for-part')}
        mode="one"
        choices={theirs.map((part) => ({ id: part.id, says: part.name }))}
        chosen={had ? [had.id] : []}
        onChoose={([id]) =>
          change({ forPart: theirs.find((part) => part.id === id)?.id ?? null, part: null, uses: {} })
        }
      />
      {had && (
        <>
          <p className="counter-asks">{t('counter.offer.part')}</p>
          {ours.length === 0 ? (
            <p>{t('counter.offer.none')}</p>
          ) : (
            <ChoiceKeys
              label={t('counter.offer.part')}
              mode="one"
              choices={ours.map((part) => ({
                id: part.id,
                says: part.tag === null ? part.name : `${part.name}, ${formatTag(part.tag)}`,
              }))}
              chosen={offered ? [offered.id] : []}
              onChoose={([id]) => change({ part: ours.find((part) => part.id === id)?.id ?? null, uses: {} })}
            />
          )}
        </>
      )}
      {had && offered && <OfferComparison sheet={sheet} offer={offer} onUses={(uses) => change({ uses })} />}
      <div className="counter-fields">
        <AmountField
          label={t('counter.offer.price')}
          labelled="above"
          currency={currency}
          minor={offer.priceMinor}
          onChange={(minor) => change({ priceMinor: minor })}
        />
        <NumberField
          label={t('counter.offer.warranty')}
          labelled="above"
          unit={t('counter.offer.months')}
          value={offer.warrantyMonths}
          onChange={(warrantyMonths) => change({ warrantyMonths })}
          least={0}
          most={240}
        />
      </div>
      {others.length > 0 && (
        <>
          <p className="counter-asks">{t('counter.offer.tax')}</p>
          <ChoiceKeys
            label={t('counter.offer.tax')}
            mode="one"
            choices={[tax.permille, ...others].map((permille) => ({
              id: String(permille),
              says: t('counter.offer.tax-rate', { rate: permille / 10 }),
            }))}
            chosen={[String(offer.taxPermille ?? tax.permille)]}
            onChoose={([id]) => change({ taxPermille: others.find((permille) => String(permille) === id) ?? null })}
          />
        </>
      )}
      <OneOf
        asks={t('counter.offer.condition')}
        words="offer.conditions"
        ids={CONDITIONS}
        chosen={offer.condition}
        onChoose={(condition) => change({ condition })}
      />
      <TextField
        label={t('counter.offer.why-not-same')}
        labelled="above"
        value={offer.whyNotSame}
        onChange={(whyNotSame) => change({ whyNotSame })}
        lines={2}
      />
      <PricedThings
        things={offer.extras}
        named={EXTRAS}
        settings={settings}
        onChange={(extras) => change({ extras })}
      />
      <AfterwardsFields
        afterwards={offer.afterwards}
        settings={settings}
        onChange={(afterwards) => change({ afterwards })}
      />
      <OneOf
        asks={t('counter.offer.old-part')}
        words="offer.old"
        ids={OLD_PART}
        chosen={offer.oldPart}
        onChoose={(oldPart) => change({ oldPart })}
      />
      {offer.oldPart === 'send' && (
        <AmountField
          label={t('counter.offer.core-worth')}
          labelled="above"
          currency={currency}
          minor={offer.coreMinor}
          onChange={(coreMinor) => change({ coreMinor })}
        />
      )}
    </>
  );
}
