import type { Sheet, Text } from '../../core/papers/content.ts';
import { textSlabs } from './blocks/paragraph.ts';
import { paintQr } from './blocks/qr.ts';
import { signingSlabs } from './blocks/signing.ts';
import { flow, gap, heightOf, type Slab, tightened, turnsFor } from './flow.ts';
import { MARGIN, MM, PAGE, RULE, STYLES } from './measures.ts';
import type { Pen } from './pen.ts';
import { sectionSlabs } from './sectionSlabs.ts';
import type { Branch } from './structure.ts';

const QR_SIDE = 17 * MM;
const SHOP_WIDTH = 46 * MM;
const FOOT_ROOM = 6.5 * MM;
const FOOT_GAP = 9;
const BEFORE_SIGNING = 6;
const AFTER_LEAD = 11;
const BEFORE_RECORD = 18;
/** Where a stamp stands, above the title. */
const ABOVE_TITLE = 8 * MM;

/** Draws the pages of a document, with what is stamped over it at its head; the first page is already there. */
export function drawSheet(sheet: Sheet, pen: Pen, root: Branch, stamps: readonly string[] = []): void {
  const [pageWidth, pageHeight] = PAGE[sheet.pageSize];
  const x = MARGIN.side;
  const width = pageWidth - 2 * MARGIN.side;
  const end = pageHeight - MARGIN.foot - FOOT_ROOM;
  const signing = sheet.signing ? signingSlabs(sheet.signing.line, { pen, branch: root.branch('Sect'), x, width }) : [];
  const signingRoom = signing.length > 0 ? heightOf(signing) + 4 : 0;
  let page = 1;
  const sign = (from = end - heightOf(signing)) => {
    let y = from;
    for (const slab of signing) {
      slab.draw(y);
      y += slab.height;
    }
  };
  const signsPageOne = sheet.signing?.on === 'page-one';
  const bottomOf = (of: number) => (of === 1 && signsPageOne ? end - signingRoom : end);
  const column = {
    top: MARGIN.top,
    bottom: () => bottomOf(page),
    turn: () => {
      if (page === 1 && signsPageOne) sign();
      page += 1;
      pen.doc.addPage();
    },
  };
  const closing = (y: number) => pen.artifact(() => pen.rule(x, y, width, RULE));
  const slabsOf = (sections: Sheet['body']): Slab[] =>
    sections.flatMap((section) => sectionSlabs(section, pen, root, x, width));

  const body = slabsOf(sheet.body);
  const signsLastPage = sheet.signing?.on === 'last-page';
  // What is signed goes over with its signature: a signature never stands alone.
  const said = signsLastPage ? keptFrom(body, sheet, slabsOf) : body;
  const bottomLine: Slab = { height: 0, keep: signsLastPage, draw: closing };
  const signature: Slab = {
    height: signingRoom + BEFORE_SIGNING,
    // On page one it stands at the foot; on a later page, where what is signed ends.
    draw: (y) => sign(page === 1 ? undefined : y + BEFORE_SIGNING),
  };
  const signed = signing.length <= 1 ? [signature] : [gap(BEFORE_SIGNING, true), ...signing];
  const start = drawHead({ sheet, stamps }, pen, root, x, width);
  const lead = textSlabs(sheet.lead, STYLES.lead, 'P', { pen, branch: root, x, width });
  const whole = [...lead, gap(AFTER_LEAD), ...said, bottomLine, ...(signsLastPage ? signed : [])];
  const bodyEnd = flow(withoutSpill(whole, bottomOf, start), column, start);
  if (signsPageOne && page === 1) sign();
  if (sheet.record) {
    const title = pen.lines(sheet.record.heading, STYLES.head, width);
    const heading: Slab = {
      height: BEFORE_RECORD + title.length * STYLES.head.line + 8,
      keep: true,
      draw: (y) => root.leaf('H2', {}, () => pen.write(title, x, y + BEFORE_RECORD, STYLES.head)),
    };
    const onOwnPage = page === 1;
    if (onOwnPage) {
      page += 1;
      pen.doc.addPage();
    }
    closing(
      flow([heading, ...slabsOf(sheet.record.sections)], column, onOwnPage ? column.top - BEFORE_RECORD : bodyEnd),
    );
  }
  drawFeet(sheet, pen, x, width, pageHeight - MARGIN.foot - STYLES.foot.line);
}

/** As it is, or set closer where that saves a page: a row or two alone on a last page are read by nobody. */
function withoutSpill(slabs: readonly Slab[], bottomOf: (page: number) => number, start: number): readonly Slab[] {
  const turns = (of: readonly Slab[]) => turnsFor(of, { top: MARGIN.top, bottomOf }, start);
  const closer = tightened(slabs);
  return turns(closer) < turns(slabs) ? closer : slabs;
}

/** The slabs of the body with the last section kept whole, and with what follows it. */
function keptFrom(body: readonly Slab[], sheet: Sheet, slabsOf: (sections: Sheet['body']) => Slab[]): Slab[] {
  const last = slabsOf(sheet.body.slice(-1)).length;
  return body.map((slab, index) => (index >= body.length - last ? { ...slab, keep: true } : slab));
}

/** Title, what paper it is, the shop, the code. Returns where the lead begins. */
function drawHead(
  { sheet, stamps }: { readonly sheet: Sheet; readonly stamps: readonly string[] },
  pen: Pen,
  root: Branch,
  x: number,
  width: number,
): number {
  const { head } = sheet;
  const top = MARGIN.top;
  const right = x + width;
  const qrRoom = head.qr ? QR_SIDE + 4 * MM : 0;
  const left = width - SHOP_WIDTH - qrRoom;
  const put = (text: Text, style: Parameters<Pen['write']>[3], role: string, y: number, wide: number) => {
    const lines = pen.lines(text, style, wide);
    root.leaf(role, {}, () => pen.write(lines, x, y, style));
    return y + lines.length * style.line;
  };
  // In the margin: what is stamped over a paper moves nothing of what was issued.
  if (stamps.length > 0) put([{ text: stamps.join(' '), strong: true }], STYLES.text, 'P', top - ABOVE_TITLE, width);
  let y = put(sheet.title, STYLES.title, 'H1', top - 4, left) + 5;
  for (const line of head.meta) y = put(line, STYLES.note, 'P', y, left);

  let shopY = top;
  for (const line of head.shop) {
    const lines = pen.lines(line, STYLES.note, SHOP_WIDTH);
    const at = shopY;
    root.leaf('P', {}, () => {
      for (const [index, one] of lines.entries()) {
        pen.write([one], right - qrRoom - SHOP_WIDTH, at + index * STYLES.note.line, STYLES.note, SHOP_WIDTH);
      }
    });
    shopY += lines.length * STYLES.note.line;
  }
  if (head.qr) paintQr(head.qr, root, pen, { x: right - QR_SIDE, y: top, side: QR_SIDE });

  y = Math.max(y, shopY, head.qr ? top + QR_SIDE : 0) + 9;
  if (sheet.supersedes) y = put([{ text: sheet.supersedes, strong: true }], STYLES.text, 'P', y, width) + 5;
  return y;
}

function drawFeet(sheet: Sheet, pen: Pen, x: number, width: number, y: number): void {
  const { doc } = pen;
  const { start, count } = doc.bufferedPageRange();
  const content = sheet.contentHash && sheet.foot.content.replace('{hash}', grouped(sheet.contentHash.slice(0, 12)));
  for (let index = 0; index < count; index++) {
    doc.switchToPage(start + index);
    const pages = sheet.foot.pages.replace('{page}', String(index + 1)).replace('{pages}', String(count));
    const right = [content, sheet.foot.record].filter(Boolean).join(' · ');
    const room = width - pen.widthOf(right, STYLES.foot) - FOOT_GAP;
    const numbered = `${pages} ${sheet.number}`;
    // The shop stands in full at the head of page one; a name too long for a foot is left out of it.
    const named = `${numbered}, ${sheet.shopName}`;
    const fits = pen.widthOf(named, STYLES.foot) <= room;
    const left = index === 0 ? `${pages} ${sheet.foot.note}` : fits ? named : numbered;
    pen.artifact(() => {
      pen.write(pen.lines(left, STYLES.foot, width), x, y, STYLES.foot);
      pen.write(pen.lines(right, STYLES.foot, width), x, y, STYLES.foot, width);
      // Below the foot, within what a printer reaches: it takes no room from what is said.
      if (index === 0 && sheet.foot.check)
        pen.write(pen.lines(sheet.foot.check, STYLES.foot, width).slice(0, 1), x, y + STYLES.foot.line, STYLES.foot);
    }, 'Pagination');
  }
}

const grouped = (hex: string) => hex.replace(/(.{4})(?=.)/g, '$1 ');
