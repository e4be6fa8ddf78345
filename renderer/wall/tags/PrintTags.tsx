import { useState } from 'react';
import type { ShopSettings } from '../../../core/job/shop.ts';
import type { TagStock } from '../../../core/papers/sizes.ts';
import { ROLL_MM } from '../../../core/papers/tags/stock.ts';
import { NumberField } from '../../kit/fields/NumberField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import type { Words } from '../../kit/text/words.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { useTagFile } from './useTagFile.ts';

const STOCKS: readonly TagStock['on'][] = ['A4', 'Letter', 'roll'];
/** About a sheet of them. */
const USUAL = 35;
const MOST = 1000;

/** Fresh tags to be bound by their first scan, on sheets or on the shop's roll; what they are printed on is kept. */
export function PrintTags({ settings }: { readonly settings: ShopSettings }) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const { print, failed } = useTagFile();
  const kept: TagStock = settings.tagsOn ?? { on: settings.paperSize };
  const [count, setCount] = useState<number | null>(USUAL);
  const [on, setOn] = useState<TagStock['on']>(kept.on);
  const [width, setWidth] = useState<number | null>(kept.on === 'roll' ? kept.widthMm : null);
  const stock: TagStock | null = on === 'roll' ? (width === null ? null : { on, widthMm: width }) : { on };
  const go = async () => {
    if (stock === null || count === null) return;
    const same = JSON.stringify(stock) === JSON.stringify(kept);
    if (!same && !(await execute('changeShop', { settings: { ...settings, tagsOn: stock } }))) return;
    await print({ is: 'fresh', count });
  };
  return (
    <form
      className="wall-deeds"
      aria-label={t('wall.tags.title')}
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <p>{t('wall.tags.how')}</p>
      <NumberField
        label={t('wall.tags.count')}
        labelled="above"
        value={count}
        onChange={setCount}
        least={1}
        most={MOST}
      />
      <ChoiceKeys
        label={t('wall.tags.on')}
        labelled="above"
        mode="one"
        choices={STOCKS.map((id) => ({ id, says: t(`wall.tags.is.${id}`) }))}
        chosen={[on]}
        onChoose={([id]) => setOn(STOCKS.find((one) => one === id) ?? on)}
      />
      {on === 'roll' && (
        <NumberField
          label={t('wall.tags.width')}
          labelled="above"
          unit="mm"
          value={width}
          onChange={setWidth}
          least={ROLL_MM.least}
          most={ROLL_MM.most}
          digits={1}
        />
      )}
      <Key submit {...(whyNot(stock, count, t) ?? {})}>
        {t('wall.tags.do')}
      </Key>
      {problem && <Problem slim {...problem} />}
      {failed && <Problem slim {...failed} />}
    </form>
  );
}

function whyNot(stock: TagStock | null, count: number | null, t: Words['t']): { readonly whyNot: string } | null {
  if (count === null) return { whyNot: t('wall.tags.needs-count') };
  return stock === null ? { whyNot: t('wall.tags.needs-width', { ...ROLL_MM }) } : null;
}
