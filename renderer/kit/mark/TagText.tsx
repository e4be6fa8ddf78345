import type { Tag } from '../../../core/custody/part.ts';
import { formatTag } from '../../../core/custody/tag.ts';
import { useWords } from '../text/words.tsx';
import './TagText.css';

/** A tag in its groups, semibold and slightly spaced; SHOP on a plate in front when it is the shop's. */
export function TagText({ tag, shop = false }: { readonly tag: Tag; readonly shop?: boolean }) {
  return (
    <span className="k-tag">
      {shop && <ShopPlate />}
      {formatTag(tag)}
    </span>
  );
}

/** The plate that says a part is the shop's. */
export function ShopPlate() {
  const { t } = useWords();
  return <span className="k-shop-plate">{t('kit.mark.shop')}</span>;
}
