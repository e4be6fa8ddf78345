import type { MarkLook } from '../mark/look.ts';
import { PartMark } from '../mark/PartMark.tsx';
import { useHatch } from '../mark/useHatch.tsx';
import { textWidth } from '../text/textWidth.ts';
import { useWords } from '../text/words.tsx';
import { Details } from './Details.tsx';
import type { InsideSlot } from './model.ts';
import { type Box, CASE, FRONT, type InsidePlan, type PlacedSlot } from './plan.ts';
import { slotName } from './words.ts';

export type DrawingProps = {
  readonly plan: InsidePlan;
  /** px per drawing unit. */
  readonly scale: number;
  /** Ids of slots whose words stand in a call-out beside the drawing. */
  readonly called: ReadonlySet<string>;
};

/** What a slot looks like: the part in it, its shadow, empty, or not seen. */
export function slotMark(one: InsideSlot): MarkLook {
  if (one.holds) return { is: 'part', whose: one.holds.whose, standing: one.holds.standing, known: one.holds.known };
  if (one.away) return { is: 'shadow' };
  return one.seen ? { is: 'empty' } : { is: 'unknown' };
}

/** The inside of the case, flat: board, slots and parts with their marks, and only those leads that matter. */
export function Drawing({ plan, scale: s, called }: DrawingProps) {
  const { t } = useWords();
  const hatch = useHatch();
  const px = (box: Box): Box => ({ x: box.x * s, y: box.y * s, w: box.w * s, h: box.h * s });
  const mark = (one: PlacedSlot, plate = true, look: MarkLook = slotMark(one.it)) => {
    const box = px(one.box);
    return (
      <PartMark
        look={look}
        id={one.it.holds?.id ?? one.it.slot.id}
        x={box.x}
        y={box.y}
        width={box.w}
        height={box.h}
        hatch={hatch.fill}
        plate={plate && Math.max(box.w, box.h) >= 84 && one.look !== 'board' && one.look !== 'supply'}
      />
    );
  };
  const of = (look: PlacedSlot['look']) => plan.slots.filter((one) => one.look === look);
  const board = of('board')[0];
  const supply = of('supply')[0];
  const front = px(FRONT);
  const unplugged = plan.slots.some((one) => one.it.holds?.unplugged === true);
  const boardIn = board?.it.holds?.known === true;
  /** A socket is not drawn under the words of its empty slot. */
  const free = (socket: Box) =>
    !of('card').some(
      ({ it, box }) =>
        it.holds === null && it.seen && !called.has(it.slot.id) && box.y <= socket.y && socket.y <= box.y + box.h,
    );
  const narrow = plan.dimms.length > 1 && dimmPitch(plan) * s < DIMM_NAME;
  return (
    <g className="k-inside-drawing">
      {hatch.defs}
      <rect {...rect(px(CASE))} rx={6} className="k-inside-case" />
      <rect {...rect(inset(px(CASE), 7))} rx={2} className="k-inside-hair" />
      <rect {...rect(front)} className="k-inside-front" />
      {board && mark(board, false)}
      <Details scale={s} board={plan.board} fans={of('fan').length} boardIn={boardIn} />
      {plan.sockets.filter(free).map((box) => (
        <rect key={box.y} {...rect(px(box))} className="k-inside-socket" />
      ))}
      {of('fan').map((one) => (
        <g key={one.it.slot.id}>{mark(one, false)}</g>
      ))}
      {supply?.it.holds && boardIn && <MainLead scale={s} boardEdge={plan.board.x + plan.board.w} />}
      {unplugged && <LooseLead scale={s} />}
      {of('cooler').map((one) => (
        <g key={one.it.slot.id}>
          {mark(one, false)}
          {one.it.holds && <path d={fins(px(one.box))} className="k-inside-fins" />}
        </g>
      ))}
      {of('socket').map((one) => (
        <g key={one.it.slot.id}>
          {mark(one, false)}
          <InsideText one={one} box={px(one.box)} shown={one.it.holds === null} />
        </g>
      ))}
      {plan.dimms.map((one) => (
        <g key={one.it.slot.id}>{mark(one)}</g>
      ))}
      {[...of('m2'), ...of('card'), ...of('bay'), ...of('optical'), ...of('cell')].map((one) => (
        <g key={one.it.slot.id}>
          {mark(one, false)}
          {one.look === 'card' && !one.it.slot.id.startsWith('?') && (one.it.holds || one.it.away) && (
            <path
              d={`M${(one.box.x - 6) * s} ${(one.box.y - 4) * s}v${(one.box.h + 8) * s}`}
              className="k-inside-bracket"
            />
          )}
          <InsideText
            one={one}
            box={px(one.box)}
            shown={!called.has(one.it.slot.id) || one.look === 'bay' || one.look === 'optical'}
          />
        </g>
      ))}
      {plan.dimms.map((one, i) => (
        <g key={one.it.slot.id} className={boardIn ? 'k-inside-haloed' : undefined}>
          <DimmName one={one} box={px(one.box)} stands={nameStands(plan.dimms.length, narrow, i)} />
        </g>
      ))}
      {supply && (
        <g className="k-inside-haloed">
          {mark(supply)}
          {supply.it.holds?.known && <SupplyFan box={px(supply.box)} />}
          <text x={(supply.box.x + 100) * s} y={(supply.box.y + 38) * s} className="k-inside-name">
            {supply.it.holds?.known ? (supply.it.holds.short ?? t('kit.kind.supply')) : ''}
          </text>
          {supply.it.holds && supply.it.holds.standing !== 'plain' && (
            <text x={(supply.box.x + 100) * s} y={(supply.box.y + 38) * s + 22} className="k-inside-second">
              {t(`kit.mark.${supply.it.holds.standing}`)}
            </text>
          )}
          {supply.it.holds?.known !== true && <InsideText one={supply} box={px(supply.box)} shown />}
        </g>
      )}
      {of('front').map((one) => (
        <g key={one.it.slot.id}>{one.it.holds?.standing !== 'plain' && one.it.holds ? mark(one, false) : null}</g>
      ))}
    </g>
  );
}

const rect = (box: Box) => ({ x: box.x, y: box.y, width: box.w, height: box.h });
const inset = (box: Box, by: number): Box => ({ x: box.x + by, y: box.y + by, w: box.w - 2 * by, h: box.h - 2 * by });

/** px that a memory slot's name takes with its distance to the next. */
const DIMM_NAME = 26;
type Stands = 'below' | 'low' | 'above';

/** Drawing units from one memory slot to the next. */
const dimmPitch = ({ dimms }: InsidePlan): number => Math.abs((dimms[1]?.box.x ?? 0) - (dimms[0]?.box.x ?? 0));

/** Where slots stand closer than their names are wide, every second name stands above its slot. */
const nameStands = (slots: number, narrow: boolean, i: number): Stands =>
  i % 2 === 0 ? 'below' : narrow ? 'above' : slots > 4 ? 'low' : 'below';

/** The slot's printed name at its end; semibold when something is in it. */
function DimmName({ one, box, stands }: { readonly one: PlacedSlot; readonly box: Box; readonly stands: Stands }) {
  if (one.it.slot.id.startsWith('?')) {
    return (
      <text x={box.x + box.w / 2} y={box.y + box.h / 2 + 9} textAnchor="middle" className="k-inside-question">
        ?
      </text>
    );
  }
  return (
    <>
      <path
        d={`M${box.x + 2} ${box.y - 3}h${box.w - 4}M${box.x + 2} ${box.y + box.h + 3}h${box.w - 4}`}
        className="k-inside-latch"
      />
      <text
        x={box.x + box.w / 2}
        y={stands === 'above' ? box.y - 7 : box.y + box.h + (stands === 'low' ? 37 : 19)}
        textAnchor="middle"
        className={one.it.holds ? 'k-inside-slot k-inside-held' : 'k-inside-slot'}
      >
        {one.it.slot.id}
      </text>
    </>
  );
}

/** Words inside an outline, when they fit and no call-out says them. */
function InsideText({ one, box, shown }: { readonly one: PlacedSlot; readonly box: Box; readonly shown: boolean }) {
  const words = useWords();
  const { holds, away } = one.it;
  const middle = box.y + box.h / 2 + 5.5;
  if (!one.it.seen || holds?.known === false) {
    const says = words.t('kit.inside.not-seen');
    const width = shown && box.h > 18 ? textWidth(says, 16) : 0;
    const beside = width + 56 < box.w;
    return (
      <>
        {beside && width > 0 && (
          <text x={box.x + 14} y={middle} className="k-inside-second">
            {says}
          </text>
        )}
        <text
          x={beside && width > 0 ? box.x + width + 34 : box.x + box.w / 2}
          y={middle + 3}
          textAnchor="middle"
          className="k-inside-question"
        >
          ?
        </text>
      </>
    );
  }
  if (!shown) return null;
  if (holds === null) {
    const says = words.t(away ? 'kit.inside.out' : 'kit.inside.empty');
    const full = one.look === 'card' || one.look === 'm2' ? `${slotName(one.it, words)}, ${says}` : says;
    const text = textWidth(full, 16) + 12 < box.w ? full : textWidth(says, 16) + 6 < box.w ? says : '';
    return (
      <text
        x={box.x + box.w / 2}
        y={middle}
        textAnchor="middle"
        className={
          one.look === 'bay' || one.look === 'optical' ? 'k-inside-second' : 'k-inside-second k-inside-on-board'
        }
      >
        {box.h > 15 ? text : ''}
      </text>
    );
  }
  const says = [holds.short, holds.what].find((text) => text !== undefined && textWidth(text, 16, 600) + 20 < box.w);
  return says === undefined || box.h < 18 ? null : (
    <g>
      {holds.whose === 'shop' && (
        <rect
          x={box.x + 6}
          y={middle - 17}
          width={textWidth(says, 16, 600) + 14}
          height={23}
          className="k-inside-label-ground"
        />
      )}
      <text x={box.x + 12} y={middle} className="k-inside-name">
        {says}
      </text>
    </g>
  );
}

function fins(box: Box): string {
  let path = '';
  for (let y = box.y + 7; y < box.y + box.h - 4; y += 7.5) path += `M${box.x + 5} ${y}h${box.w - 10}`;
  return path;
}

function SupplyFan({ box }: { readonly box: Box }) {
  const r = Math.min(29, box.h * 0.34);
  const [x, y] = [box.x + r * 2, box.y + (box.h - 5) / 2];
  const blades = [0, 1, 2, 3].map((i) => {
    const a = (i * Math.PI) / 2 + 0.4;
    const at = (radius: number, angle: number) =>
      `${(radius * Math.cos(a + angle)).toFixed(1)} ${(radius * Math.sin(a + angle)).toFixed(1)}`;
    return `M${(x + r * 0.24 * Math.cos(a)).toFixed(1)} ${(y + r * 0.24 * Math.sin(a)).toFixed(1)}q${at(r * 0.55, 0.9)} ${at(r * 0.72, 0.3)}`;
  });
  return (
    <g>
      <circle cx={x} cy={y} r={r + 2} className="k-inside-label-ground" />
      <circle cx={x} cy={y} r={r} className="k-inside-detail" />
      <circle cx={x} cy={y} r={r * 0.24} className="k-inside-detail" />
      <path d={blades.join('')} className="k-inside-detail" />
    </g>
  );
}

/** From the supply to the board's main power plug. */
function MainLead({ scale: s, boardEdge }: { readonly scale: number; readonly boardEdge: number }) {
  const d = `M${274 * s} ${554 * s}H${(boardEdge + 42) * s}V${174 * s}H${(boardEdge - 6) * s}`;
  return (
    <g>
      <path d={d} className="k-inside-lead-edge" />
      <path d={d} className="k-inside-lead-core" />
      <rect x={(boardEdge - 22) * s} y={136 * s} width={18 * s} height={78 * s} className="k-inside-plug" />
      <path d={`M${(boardEdge - 13) * s} ${136 * s}v${78 * s}`} className="k-inside-detail" />
    </g>
  );
}

/** A drive's lead that ends in the open, with its loose plug. */
function LooseLead({ scale: s }: { readonly scale: number }) {
  return (
    <g>
      <path d={`M${274 * s} ${578 * s}H${522 * s}V${566 * s}`} className="k-inside-loose" />
      <rect x={514 * s} y={552 * s} width={16 * s} height={14 * s} className="k-inside-plug" />
    </g>
  );
}
