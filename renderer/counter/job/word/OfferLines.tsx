import type { ShopSettings } from '../../../../core/job/shop.ts';
import type { WordKey } from '../../../catalogue.ts';
import { AmountField } from '../../../kit/fields/AmountField.tsx';
import { NumberField } from '../../../kit/fields/NumberField.tsx';
import { TextField } from '../../../kit/fields/TextField.tsx';
import { Key } from '../../../kit/keys/Key.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import type { OfferSheet, PricedThing } from './askSheet.ts';

type Afterwards = OfferSheet['afterwards'];

const put = <T,>(list: readonly T[], at: number, patch: Partial<T>): readonly T[] =>
  list.map((one, i) => (i === at ? { ...one, ...patch } : one));

/** Things with a price each: small ones that come with a part, or what can be agreed to one by one. */
export function PricedThings({
  things,
  named,
  settings,
  onChange,
}: {
  readonly things: readonly PricedThing[];
  /** Where their words are. */
  readonly named: { readonly thing: WordKey; readonly price: WordKey; readonly add: WordKey };
  readonly settings: ShopSettings;
  readonly onChange: (things: readonly PricedThing[]) => void;
}) {
  const { t } = useWords();
  const { currency } = settings;
  return (
    <>
      {things.map((thing, at) => (
        <div key={at} className="counter-fields">
          <TextField
            label={t(named.thing, { n: at + 1 })}
            labelled="above"
            value={thing.what}
            onChange={(what) => onChange(put(things, at, { what }))}
            chars={28}
          />
          <AmountField
            label={t(named.price, { n: at + 1 })}
            labelled="above"
            currency={currency}
            minor={thing.priceMinor}
            onChange={(minor) => onChange(put(things, at, { priceMinor: minor ?? 0 }))}
          />
        </div>
      ))}
      <Key kind="link" onPress={() => onChange([...things, { what: '', priceMinor: 0 }])}>
        {t(named.add)}
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
