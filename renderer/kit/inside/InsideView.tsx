import { type KeyboardEvent, type ReactNode, useState } from 'react';
import { Problem } from '../keys/Problem.tsx';
import { useWords } from '../text/words.tsx';
import { useRoving } from '../useRoving.ts';
import { useSize } from '../useSize.ts';
import { CallOutText, Lead } from './CallOutText.tsx';
import { setCallOuts } from './callOuts.ts';
import { callOutsOf } from './callOutWords.ts';
import { DimmKeys } from './DimmKeys.tsx';
import { Drawing } from './Drawing.tsx';
import { type Drop, GUESSED, type InsidePart, type InsidePlace, type InsideSlot, withUnseen } from './model.ts';
import { Places } from './Places.tsx';
import { type Box, type PlacedSlot, planOf, UNITS } from './plan.ts';
import { useDrag } from './useDrag.ts';
import { dropId, type OnMove, useHand } from './useHand.ts';
import { slotLines, slotSaid } from './words.ts';
import './InsideView.css';

export type InsideViewProps = {
  /** The slots of this machine and what is in them. May be empty: then it is drawn with everything unseen. */
  readonly slots: readonly InsideSlot[];
  /** Trays, bench and rig: what is out of the machine, and where a part can be put down. */
  readonly places: readonly InsidePlace[];
  /** `ATX`, `microATX`, `Mini-ITX` when known. */
  readonly boardForm?: string;
  /** A part that was scanned and waits for a slot to be pressed. */
  readonly inHand?: InsidePart | null;
  readonly onMove: OnMove;
  /** What was pressed; null when nothing is chosen any more. The room shows its deeds in `deeds`. */
  readonly onChoose?: (chosen: { readonly slot: string | null; readonly part: InsidePart | null } | null) => void;
  /** Keys for what is chosen, beside its words at the foot. */
  readonly deeds?: ReactNode;
};

const MARGIN = 24;
const FOOT = 56;
const HIT = 48;

/** This machine as one looks into its open case. Parts are moved by drag, by two presses, or by keys; each is said in words. */
export function InsideView({ slots, places, boardForm, inHand = null, onMove, onChoose, deeds }: InsideViewProps) {
  const words = useWords();
  const { t } = words;
  const { ref, size } = useSize<HTMLElement>({ width: 678, height: 520 });
  const [focused, setFocused] = useState<string | null>(null);
  const [bankOpen, setBankOpen] = useState(false);
  const hand = useHand(inHand, onMove, (part) =>
    onChoose?.(part === null ? null : { slot: slotOf(slots, part), part }),
  );
  const plan = planOf(withUnseen(slots), boardForm);

  const columns = size.width >= 1000 ? 2 : 1;
  const column = size.width < 560 ? 0 : columns === 2 ? 186 : 152;
  const room = {
    width: size.width - MARGIN - (column === 0 ? MARGIN : columns === 2 ? column * 2 + 76 : column + 34),
    height: size.height - FOOT - 12,
  };
  const scale = Math.max(0.4, Math.min(room.width / UNITS.width, room.height / UNITS.height));
  const height = UNITS.height * scale;
  const origin = {
    x: columns === 2 && column > 0 ? MARGIN + column + 30 + Math.max(0, room.width - UNITS.width * scale) / 2 : MARGIN,
    y: Math.max(6, (size.height - FOOT - height) / 2),
  };
  const calls = column === 0 ? [] : callOutsOf(plan, { columns, column, height, scale }, words);
  const edges = { left: -14, right: UNITS.width * scale + 10 };
  const set = (['left', 'right'] as const).flatMap((side) =>
    setCallOuts(
      calls.filter((call) => call.side === side),
      edges[side],
      0,
      height,
    ).map((one) => ({ ...one, side, lines: calls.find((call) => call.id === one.id)?.lines ?? [] })),
  );

  const bank = plan.dimms.length > 1 ? plan.dimms : [];
  const targets = [...plan.slots.filter((one) => !bank.includes(one))].sort(byArea);
  const order = [...targets].sort((a, b) => a.box.y - b.box.y || a.box.x - b.box.x).map((one) => one.it.slot.id);
  const ids = bank.length > 0 ? ['bank', ...order] : order;
  const roving = useRoving(ids);
  const find = (id: string) => plan.slots.find((one) => one.it.slot.id === id);

  const press = (one: PlacedSlot) => {
    if (drag.swallowed()) return;
    const { holds, away, slot } = one.it;
    const held = hand.part;
    if (held && (inHand !== null || !holds) && !slot.id.startsWith(GUESSED))
      return hand.drop(held, { to: 'slot', slot: slot.id });
    const part = holds ?? away;
    if (part) return hand.take(held?.id === part.id ? null : part);
    onChoose?.({ slot: slot.id, part: null });
  };
  const dropped = (part: InsidePart, id: string, x: number) => {
    if (id === 'bank') {
      const left = ref.current?.getBoundingClientRect().left ?? 0;
      const near = [...bank].sort(
        (a, b) =>
          Math.abs(middle(a) - (x - left - origin.x) / scale) - Math.abs(middle(b) - (x - left - origin.x) / scale),
      )[0];
      if (near) hand.drop(part, { to: 'slot', slot: near.it.slot.id });
      return;
    }
    const to: Drop = id.startsWith('slot:') ? { to: 'slot', slot: id.slice(5) } : { to: 'place', place: id.slice(6) };
    if (to.to === 'slot' && to.slot === slotOf(slots, part)) return;
    hand.drop(part, to);
  };
  const drag = useDrag(dropped);
  const keys = (event: KeyboardEvent<HTMLElement>) => {
    if (event.key === 'Escape' && (hand.part || bankOpen || hand.refused)) {
      event.preventDefault();
      hand.take(null);
      setBankOpen(false);
      return;
    }
    roving.onKeyDown(event);
  };

  const at = (box: Box) => ({
    left: origin.x + box.x * scale,
    top: origin.y + box.y * scale,
    width: box.w * scale,
    height: box.h * scale,
  });
  const hit = (box: Box) => {
    const real = at(box);
    const width = Math.max(real.width, Math.min(HIT, real.width + 30));
    const tall = Math.max(real.height, HIT);
    return {
      left: real.left - (width - real.width) / 2,
      top: real.top - (tall - real.height) / 2,
      width,
      height: tall,
    };
  };
  const bankBox: Box | null = bank.length > 0 ? around(bank.map((one) => one.box)) : null;
  const saidOf = focused === 'bank' ? null : focused === null ? null : find(focused);
  const refusedBox = hand.refused
    ? hand.refused.at.startsWith('slot:')
      ? find(hand.refused.at.slice(5))?.box
      : undefined
    : undefined;
  const inHandId = hand.part?.id;

  return (
    <section
      className="k-inside"
      ref={ref}
      aria-label={t('kit.inside.name')}
      data-carrying={hand.part ? '' : undefined}
    >
      <svg width={size.width} height={size.height} aria-hidden="true" className="k-inside-svg">
        <g transform={`translate(${origin.x} ${origin.y})`}>
          <Drawing plan={plan} scale={scale} called={new Set(calls.map((call) => call.slotId))} />
          {set.map((one) => (
            <Lead
              key={one.id}
              from={one.side === 'left' ? edges.left - 14 : edges.right + 12}
              leaves={one.leaves}
              anchor={one.anchor}
            />
          ))}
        </g>
      </svg>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset brings its own box; this groups the slots of the drawing */}
      <div role="group" aria-label={t('kit.inside.slots')} onKeyDown={keys} className="k-inside-targets">
        {bankBox && (
          <button
            type="button"
            {...roving.item('bank')}
            onFocus={() => {
              roving.item('bank').onFocus();
              setFocused('bank');
            }}
            className="k-inside-target"
            style={at({ x: bankBox.x - 6, y: bankBox.y - 6, w: bankBox.w + 12, h: bankBox.h + 30 })}
            aria-expanded={bankOpen}
            aria-label={t('kit.inside.bank', { slots: bank.map((one) => slotSaid(one.it, words)).join('; ') })}
            data-drop="bank"
            onClick={() => {
              if (!drag.swallowed()) setBankOpen(!bankOpen);
            }}
          />
        )}
        {targets.map((one) => {
          const part = one.it.holds ?? one.it.away;
          const id = one.it.slot.id;
          return (
            <button
              key={id}
              type="button"
              {...roving.item(id)}
              {...drag.grip(one.it.holds)}
              onFocus={() => {
                roving.item(id).onFocus();
                setFocused(id);
              }}
              onMouseEnter={() => setFocused(id)}
              className={`k-inside-target${part !== null && part.id === inHandId ? ' k-inside-chosen' : ''}`}
              style={one.look === 'board' ? at({ ...one.box, y: one.box.y + one.box.h - 40, h: 40 }) : hit(one.box)}
              aria-label={slotSaid(one.it, words)}
              aria-pressed={part === null ? undefined : part.id === inHandId}
              data-drop={id.startsWith(GUESSED) ? undefined : dropId({ to: 'slot', slot: id })}
              onClick={() => press(one)}
            />
          );
        })}
        {set.map((one) => {
          const placed = find(one.id);
          return (
            <button
              key={one.id}
              type="button"
              tabIndex={-1}
              aria-hidden="true"
              className={`k-inside-call k-inside-call-${one.side}${columns === 2 ? '' : ' k-inside-call-narrow'}`}
              style={{
                top: origin.y + one.top,
                width: column,
                left: one.side === 'left' ? origin.x + edges.left - 20 - column : origin.x + edges.right + 18,
              }}
              {...drag.grip(placed?.it.holds ?? null)}
              onMouseEnter={() => setFocused(one.id)}
              onClick={() => {
                if (placed) press(placed);
              }}
            >
              <CallOutText lines={one.lines} />
            </button>
          );
        })}
      </div>
      {bankOpen && bankBox && (
        <DimmKeys
          dimms={bank.map((one) => one.it)}
          inHand={hand.part}
          style={{
            left: Math.max(8, Math.min(origin.x + bankBox.x * scale - 40, size.width - 64 * bank.length - 60)),
            top: origin.y + (bankBox.y + 60) * scale,
          }}
          onPress={(id) => {
            const one = find(id);
            if (!one) return;
            if (hand.part && !one.it.holds) setBankOpen(false);
            press(one);
          }}
          onClose={() => setBankOpen(false)}
        />
      )}
      {hand.refused && (
        <div
          className="k-inside-refused"
          style={
            refusedBox
              ? {
                  left: Math.min(at(refusedBox).left, Math.max(8, size.width - 360)),
                  top: Math.min(at(refusedBox).top + 8, size.height - 200),
                }
              : { right: 12, bottom: FOOT + 8 }
          }
        >
          <Problem {...hand.refused.words}>
            <button type="button" className="k-inside-leave" onClick={hand.forget}>
              {t('kit.close')}
            </button>
          </Problem>
        </div>
      )}
      <div className="k-inside-foot">
        <p className="k-inside-said" role="status">
          {hand.part ? (
            <>
              <b>{t('kit.inside.in-hand', { what: hand.part.what })}</b>{' '}
              <span className="k-muted">{t('kit.inside.where-to')}</span>
            </>
          ) : saidOf ? (
            <>
              <b>{slotLines(saidOf.it, words)[0]?.text}</b>{' '}
              <span className="k-muted">
                {slotLines(saidOf.it, words)
                  .slice(1)
                  .map((line) => line.text)
                  .join(', ')}
              </span>
            </>
          ) : (
            <span className="k-muted">{t('kit.inside.how')}</span>
          )}
        </p>
        {deeds}
        <Places
          places={places}
          inHand={hand.part}
          grip={drag.grip}
          onDrop={(place) => hand.part && hand.drop(hand.part, { to: 'place', place })}
          onTake={(part) => hand.take(part.id === inHandId ? null : part)}
        />
      </div>
      {drag.dragged && (
        <div
          className="k-inside-ghost"
          style={{ left: drag.dragged.x + 12, top: drag.dragged.y + 12 }}
          aria-hidden="true"
        >
          {drag.dragged.part.what}
        </div>
      )}
    </section>
  );
}

const middle = (one: PlacedSlot) => one.box.x + one.box.w / 2;
/** Larger ones first in the document, so that a small target lies on top of the large one around it. */
const byArea = (a: PlacedSlot, b: PlacedSlot) => b.box.w * b.box.h - a.box.w * a.box.h;
const slotOf = (slots: readonly InsideSlot[], part: InsidePart) =>
  slots.find((one) => one.holds?.id === part.id)?.slot.id ?? null;

function around(boxes: readonly Box[]): Box {
  const x = Math.min(...boxes.map((box) => box.x));
  const y = Math.min(...boxes.map((box) => box.y));
  return {
    x,
    y,
    w: Math.max(...boxes.map((box) => box.x + box.w)) - x,
    h: Math.max(...boxes.map((box) => box.y + box.h)) - y,
  };
}
