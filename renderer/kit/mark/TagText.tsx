import './TagText.css';

/** Groups a seven-character code as it is read aloud: three, three, one. */
export function tagGroups(tag: string): string {
  const plain = tag.replace(/[\s-]/g, '');
  return plain.replace(/^(.{3})(.{3})(.*)$/, '$1 $2 $3').trim();
}

/** A tag in its groups, semibold and slightly spaced; SHOP on a plate in front when it is the shop's. */
export function TagText({ tag, shop = false }: { readonly tag: string; readonly shop?: boolean }) {
  return (
    <span className="k-tag">
      {shop && <ShopPlate />}
      {tagGroups(tag)}
    </span>
  );
}

/** The plate that says a part is the shop's. */
export function ShopPlate() {
  return <span className="k-shop-plate">SHOP</span>;
}
