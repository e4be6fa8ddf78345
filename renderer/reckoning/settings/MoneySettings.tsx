import { useState } from 'react';
import type { ShopSettings } from '../../../core/job/shop.ts';
import { minorDigits } from '../../../core/money/minorDigits.ts';
import type { IdOf } from '../../catalogue.ts';
import { AmountField } from '../../kit/fields/AmountField.tsx';
import { NumberField } from '../../kit/fields/NumberField.tsx';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { YesNo } from '../../kit/keys/YesNo.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { permilles, ratesText } from './ratesText.ts';

type Sheet = {
  readonly hourMinor: number | null;
  readonly feeMinor: number | null;
  readonly credited: 'yes' | 'no' | null;
  readonly coversMinutes: number | null;
  readonly percent: number | null;
  readonly others: string;
  readonly inside: 'yes' | 'no' | null;
  readonly perTotal: 'yes' | 'no' | null;
  readonly storageMinor: number | null;
  readonly storageAfter: number | null;
  readonly tries: number | null;
  readonly holds: number | null;
};

const sheetOf = ({ perMinuteMinor, findingFee, tax, rules }: ShopSettings): Sheet => ({
  hourMinor: Math.round(perMinuteMinor * 60),
  feeMinor: findingFee.minor,
  credited: findingFee.credited ? 'yes' : 'no',
  coversMinutes: findingFee.coversMinutes,
  percent: tax.permille / 10,
  others: ratesText(tax.others ?? []),
  inside: tax.inside ? 'yes' : 'no',
  perTotal: tax.round === 'per-total' ? 'yes' : 'no',
  storageMinor: rules.storageFeeMinorPerDay,
  storageAfter: rules.storageFeeAfterDays,
  tries: rules.triesBeforeHome,
  holds: rules.questionValidHours,
});

/** The settings as the sheet would have them; null while something of it is open. */
function settingsFrom(settings: ShopSettings, sheet: Sheet): ShopSettings | null {
  const { hourMinor, feeMinor, coversMinutes, percent, storageMinor, storageAfter, tries, holds } = sheet;
  const others = permilles(sheet.others);
  const given = [hourMinor, feeMinor, coversMinutes, percent, storageMinor, storageAfter, tries, holds];
  if (others === null || given.includes(null) || [sheet.credited, sheet.inside, sheet.perTotal].includes(null))
    return null;
  return {
    ...settings,
    perMinuteMinor: (hourMinor ?? 0) / 60,
    findingFee: { minor: feeMinor ?? 0, credited: sheet.credited === 'yes', coversMinutes: coversMinutes ?? 0 },
    tax: {
      ...settings.tax,
      permille: (percent ?? 0) * 10,
      others,
      inside: sheet.inside === 'yes',
      round: sheet.perTotal === 'yes' ? 'per-total' : 'per-line',
    },
    rules: {
      ...settings.rules,
      storageFeeMinorPerDay: storageMinor ?? 0,
      storageFeeAfterDays: storageAfter ?? 0,
      triesBeforeHome: tries ?? 1,
      questionValidHours: holds ?? 1,
    },
  };
}

/** What work costs, the finding fee, tax and how it is rounded, storage, and how the owner is asked. */
export function MoneySettings({ settings }: { readonly settings: ShopSettings }) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const [sheet, setSheet] = useState(() => sheetOf(settings));
  const [saved, setSaved] = useState(false);
  const { currency } = settings;
  const asked = settingsFrom(settings, sheet);
  const change = (patch: Partial<Sheet>) => {
    setSaved(false);
    setSheet({ ...sheet, ...patch });
  };
  const says = (id: IdOf<'reckoning.money'>) => t(`reckoning.money.${id}`);
  const amount = (id: 'hourMinor' | 'feeMinor' | 'storageMinor') => (
    <AmountField
      label={says(id)}
      labelled="above"
      currency={currency}
      minor={sheet[id]}
      onChange={(minor) => change({ [id]: minor })}
    />
  );
  const figure = (
    id: 'coversMinutes' | 'storageAfter' | 'tries' | 'holds',
    least: number,
    unit?: 'minutes' | 'hours' | 'days',
  ) => (
    <NumberField
      label={says(id)}
      labelled="above"
      least={least}
      most={id === 'tries' ? 20 : 10_000}
      {...(unit !== undefined && { unit: says(unit) })}
      value={sheet[id]}
      onChange={(value) => change({ [id]: value })}
    />
  );
  const yesNo = (id: 'credited' | 'inside' | 'perTotal') => (
    <YesNo asks={says(id)} answer={sheet[id]} onAnswer={(answer) => change({ [id]: answer })} />
  );
  return (
    <form
      className="promise-settings"
      aria-label={says('title')}
      onSubmit={(event) => {
        event.preventDefault();
        if (asked) void execute('changeShop', { settings: asked }).then((done) => setSaved(done !== null));
      }}
    >
      <h2>{says('title')}</h2>
      <div className="promise-settings-row">
        {amount('hourMinor')}
        {amount('feeMinor')}
        {figure('coversMinutes', 0, 'minutes')}
      </div>
      {yesNo('credited')}
      <h2>{says('tax')}</h2>
      <div className="promise-settings-row">
        <NumberField
          label={says('percent')}
          labelled="above"
          unit="%"
          least={0}
          most={100}
          digits={3}
          value={sheet.percent}
          onChange={(percent) => change({ percent })}
        />
        <TextField
          label={says('others')}
          labelled="above"
          value={sheet.others}
          onChange={(others) => change({ others })}
          chars={16}
        />
      </div>
      {yesNo('inside')}
      {yesNo('perTotal')}
      <h2>{says('asking')}</h2>
      <div className="promise-settings-row">
        {figure('holds', 1, 'hours')}
        {figure('tries', 1)}
      </div>
      <h2>{says('storage')}</h2>
      <p className="k-muted">{says('storage-says')}</p>
      <div className="promise-settings-row">
        {amount('storageMinor')}
        {figure('storageAfter', 0, 'days')}
      </div>
      <Key submit {...(asked ? {} : { whyNot: says('needs') })}>
        {says('keep')}
      </Key>
      {saved && <p role="status">{says('kept')}</p>}
      {problem && <Problem slim {...problem} />}
      <p className="k-muted k-small">{t('reckoning.money.digits', { currency, n: minorDigits(currency) })}</p>
    </form>
  );
}
