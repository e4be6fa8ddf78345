import { lineCount } from '../text/textWidth.ts';
import type { Words } from '../text/words.tsx';
import type { CallOutWanted } from './callOuts.ts';
import type { InsidePlan, PlacedSlot } from './plan.ts';
import { type CallOutLine, differs, slotLines } from './words.ts';

export type CallOut = CallOutWanted & {
  readonly slotId: string;
  readonly lines: readonly CallOutLine[];
  readonly side: 'left' | 'right';
};

/** px: first line semibold, then the others. */
export const LINE = {
  wide: { head: 18.5, text: 17, height: 23 },
  narrow: { head: 17.5, text: 16.5, height: 20.5 },
} as const;

/** The columns beside the drawing: how many, how wide and high each is in px, and px to a unit of the drawing. */
type CallOutRoom = {
  readonly columns: 1 | 2;
  readonly column: number;
  readonly height: number;
  readonly scale: number;
};

/**
 * What is called out, and on which side. With two columns everything that is there; with one only what differs from
 * "the owner's, in its place". Like DIMMs share one. What a column has no room for stays inside the drawing's own words.
 */
export function callOutsOf(
  plan: InsidePlan,
  { columns, column, height, scale }: CallOutRoom,
  words: Words,
): readonly CallOut[] {
  const size = columns === 2 ? LINE.wide : LINE.narrow;
  const candidates = plan.slots.filter((one) =>
    columns === 2 ? one.it.holds !== null || one.it.away !== null || !one.it.seen : differs(one.it),
  );
  const groups = columns === 1 ? withOutTogether(candidates, words) : grouped(candidates, words);
  const all = groups.flatMap(({ slots, lines }): readonly CallOut[] => {
    const last = slots.at(-1);
    if (!last) return [];
    const side = columns === 1 || last.box.x + last.box.w / 2 > 300 || last.look === 'board' ? 'right' : 'left';
    const anchor = side === 'left' ? last.fromLeft : last.fromRight;
    const rows = lines.reduce((sum, line) => {
      const weight = line.tone === 'plain' || line.tone === 'muted' ? 400 : line.tone === 'ours' ? 700 : 600;
      return sum + lineCount(line.text, line.tone === 'head' ? size.head : size.text, weight, column - 2);
    }, 0);
    return [
      {
        id: last.it.slot.id,
        slotId: last.it.slot.id,
        lines,
        side,
        height: rows * size.height,
        anchor: { x: anchor.x * scale, y: anchor.y * scale },
      },
    ];
  });
  return [...fitting(all, 'left', height, plan), ...fitting(all, 'right', height, plan)];
}

/** What is out lies together on a tray: one call-out says what is there, and the rest is called out as usual. */
function withOutTogether(slots: readonly PlacedSlot[], words: Words): ReturnType<typeof grouped> {
  const out = slots.filter((one) => one.it.holds === null && one.it.away !== null);
  const places = [...new Set(out.map((one) => one.it.away?.where ?? ''))];
  const rest = grouped(
    slots.filter((one) => !out.includes(one)),
    words,
  );
  return [
    ...rest,
    ...places.map((where) => {
      const here = out.filter((one) => (one.it.away?.where ?? '') === where);
      const kinds = here.flatMap((one) => (one.it.away ? [one.it.away.kind] : []));
      const names = [...new Set(kinds)].map((kind) => {
        const n = kinds.filter((other) => other === kind).length;
        const name = words.t(`kit.kind.${kind}`);
        return n === 1 ? name : `${n} × ${name}`;
      });
      const lines: readonly CallOutLine[] = [
        { text: words.t('kit.inside.out-at', { where }), tone: 'head' },
        { text: words.t('kit.inside.owner', { where: words.list(names) }), tone: 'plain' },
      ];
      return { slots: here, lines };
    }),
  ];
}

/** DIMMs that say the same are said once, with the names of their slots. */
function grouped(
  slots: readonly PlacedSlot[],
  words: Words,
): readonly { readonly slots: readonly PlacedSlot[]; readonly lines: readonly CallOutLine[] }[] {
  const groups = new Map<string, { slots: PlacedSlot[]; lines: readonly CallOutLine[] }>();
  for (const one of slots) {
    const lines = slotLines(one.it, words);
    const alike = one.look === 'dimm' && one.it.holds?.whose !== 'shop';
    const key = alike ? `dimm ${one.it.holds ? 'in' : 'out'} ${JSON.stringify(lines)}` : one.it.slot.id;
    const group = groups.get(key);
    if (group) group.slots.push(one);
    else groups.set(key, { slots: [one], lines });
  }
  return [...groups.values()].map(({ slots: members, lines }) => {
    const [head, ...rest] = lines;
    if (!head || members[0]?.look !== 'dimm' || members[0].it.slot.id.startsWith('?')) return { slots: members, lines };
    const named = words.t('kit.inside.in-slot', {
      what: head.text,
      slot: words.list(members.map((one) => one.it.slot.id)),
    });
    return { slots: members, lines: [{ ...head, text: named }, ...rest] };
  });
}

/** As many as the column holds, those that differ first. */
function fitting(all: readonly CallOut[], side: CallOut['side'], height: number, plan: InsidePlan): readonly CallOut[] {
  const matters = (call: CallOut) =>
    Number(plan.slots.some((one) => one.it.slot.id === call.slotId && differs(one.it)));
  const here = all.filter((call) => call.side === side).sort((a, b) => matters(b) - matters(a));
  let left = height;
  return here.filter((call) => {
    left -= call.height + 12;
    return left >= 0;
  });
}
