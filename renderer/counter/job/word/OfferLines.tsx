import type { ShopSettings } from '../../../../core/job/shop.ts';
import { AmountField } from '../../../kit/fields/AmountField.tsx';
import { NumberField } from '../../../kit/fields/NumberField.tsx';
import { TextField } from '../../../kit/fields/TextField.tsx';
import { Key } from '../../../kit/keys/Key.tsx';
import { useWords } from '../../../kit/words.tsx';
import type { OfferSheet } from './askSheet.ts';

type Extras = OfferSheet['extras'];
type Afterwards = OfferSheet['afterwards'];

const put = <T,>(list: readonly T[], at: number, patch: Partial<T>): readonly T[] =>
  list.map((one, i) => (i === at ? { ...one, ...patch } : one));

/** Small things that come with the part, each with its price. */
export function ExtrasFields({
  extras,
  settings,
  onChange,
}: {
  readonly extras: Extras;
  readonly settings: ShopSettings;
  readonly onChange: (extras: Extras) => void;
}) {
  const { t } = useWords();
  const { currency } = settings;
  return (
    <>
      {extras.map((extra, at) => (
        <div key={at} className="counter-fields">
          <TextField
            label={t('counter.offer.extra', { n: at + 1 })}
            labelled="above"
            value={extra.what}
            onChange={(what) => onChange(put(extras, at, { what }))}
            chars={28}
          />
          <AmountField
            label={t('counter.offer.extra-price', { n: at + 1 })}
            labelled="above"
            currency={currency}
            minor={extra.priceMinor}
            onChange={(minor) => onChange(put(extras, at, { priceMinor: minor ?? 0 }))}
          />
        </div>
      ))}
      <Key kind="link" onPress={() => onChange([...extras, { what: '', priceMinor: 0 }])}>
        {t('counter.offer.add-extra')}
      </Key>
    </>
  );
}

/** What the owner will have to do afterwards, with minutes and a price if we do it. */
export function AfterwardsFields({
  afterwards,
  settings,
  onChange,
}: {
  readonly afterwards: Afterwards;
  readonly settings: ShopSettings;
  readonly onChange: (afterwards: Afterwards) => void;
}) {
  const { t } = useWords();
  const { currency } = settings;
  return (
    <>
      {afterwards.map((line, at) => (
        <div key={at} className="counter-fields">
          <TextField
            label={t('counter.offer.afterwards', { n: at + 1 })}
            labelled="above"
            value={line.says}
            onChange={(says) => onChange(put(afterwards, at, { says }))}
            chars={36}
          />
          <NumberField
            label={t('counter.offer.afterwards-minutes', { n: at + 1 })}
            labelled="above"
            value={line.minutes}
            onChange={(minutes) => onChange(put(afterwards, at, { minutes: minutes ?? 0 }))}
            least={0}
            most={600}
            chars={4}
          />
          <AmountField
            label={t('counter.offer.afterwards-price', { n: at + 1 })}
            labelled="above"
            currency={currency}
            minor={line.priceMinor}
            onChange={(minor) => onChange(put(afterwards, at, { priceMinor: minor }))}
          />
        </div>
      ))}
      <Key kind="link" onPress={() => onChange([...afterwards, { says: '', minutes: 0, priceMinor: null }])}>
        {t('counter.offer.add-afterwards')}
      </Key>
    </>
  );
}
