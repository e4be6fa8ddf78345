import socketTable from '../../../assets/fit/sockets.json' with { type: 'json' };
import type { Attributes } from '../../custody/part.ts';
import { type MachineView, partsOf, sideOf, theOne } from '../machineView.ts';
import { firmwareReaches, processorOnList } from '../processorList.ts';
import { atMost, ground, type Reason, same } from '../reason.ts';
import { flagOf, listOf, numberFact, textOf } from '../values.ts';

type Named = { readonly name: string; readonly attributes: Attributes };
type Side = 'part' | 'board' | 'processor' | 'cooler';

/**
 * Grounds for a processor on a board, whichever of the two is new. The socket is necessary, not sufficient: the board's
 * own list and firmware decide.
 */
export function processorOnBoard(
  processor: Named,
  board: Named | undefined,
  at: { processor: Side; board: Side },
): readonly Reason[] {
  const on = board?.attributes ?? {};
  const socket = ground(
    'socket',
    { value: textOf(processor.attributes, 'socket'), look: { at: at.processor, attribute: 'socket' } },
    { value: textOf(on, 'socket'), look: { at: at.board, attribute: 'socket' } },
    same,
    { source: socketTable.rule.source },
  );
  if (socket.says === 'no') return [socket];
  return [socket, ...onList(processor, on, at.board), ...boardWatts(processor, on, at)];
}

function onList(processor: Named, board: Attributes, at: Side): readonly Reason[] {
  const listed = processorOnList(board, processor.name);
  const list = listOf(board, 'processor-list') ?? null;
  const reason = { fact: 'processor-list', source: 'board-list', part: processor.name, place: list } as const;
  if (listed.is === 'unknown') return [{ ...reason, says: 'unknown', look: [{ at, attribute: 'processor-list' }] }];
  if (listed.is === 'not-listed') return [{ ...reason, says: 'no', look: [] }];
  const yes: Reason = { ...reason, says: 'yes', look: [] };
  if (listed.from === null) return [yes];
  const { from } = listed;
  const firmware = ground(
    'firmware',
    { value: from, look: { at, attribute: 'processor-list' } },
    { value: textOf(board, 'firmware'), look: { at, attribute: 'firmware' } },
    ({ place }) => {
      const reaches = firmwareReaches(String(place), from);
      return reaches === undefined ? 'unknown' : reaches ? 'yes' : 'no';
    },
    { source: 'board-list' },
  );
  return [yes, firmware];
}

/** Checked where the board says how much its regulator carries. */
function boardWatts(processor: Named, board: Attributes, at: { processor: Side; board: Side }): readonly Reason[] {
  const most = numberFact(board, 'most-processor-watts');
  if (most === undefined) return [];
  const watts = {
    value: numberFact(processor.attributes, 'watts'),
    look: { at: at.processor, attribute: 'watts' },
  } as const;
  return [
    ground('board-watts', watts, { value: most, look: { at: at.board, attribute: 'most-processor-watts' } }, atMost),
  ];
}

/** The cooler's rated watts against the processor's; nothing where there is no cooler to weigh. */
export function coolerCarries(
  cooler: Attributes | undefined,
  processor: Attributes | undefined,
  at: { cooler: Side; processor: Side },
): readonly Reason[] {
  if (!cooler || !processor) return [];
  const watts = { value: numberFact(processor, 'watts'), look: { at: at.processor, attribute: 'watts' } } as const;
  return [
    ground(
      'cooler-watts',
      watts,
      { value: numberFact(cooler, 'watts'), look: { at: at.cooler, attribute: 'watts' } },
      atMost,
    ),
  ];
}

/** A processor without graphics needs a card for its picture. */
export function pictureReason(processor: Attributes, machine: MachineView, at: Side): Reason {
  const own = flagOf(processor, 'picture-output');
  const card = partsOf(machine, 'card').length > 0;
  const reason = { fact: 'picture-output', source: 'recorded', part: own ?? null, place: card, look: [] } as const;
  if (own || card) return { ...reason, says: 'yes' };
  return own === undefined
    ? { ...reason, says: 'unknown', look: [{ at, attribute: 'picture-output' }] }
    : { ...reason, says: 'no' };
}

/** Grounds for a processor in the machine's socket. */
export function processorReasons(processor: Named, machine: MachineView): readonly Reason[] {
  return [
    ...processorOnBoard(processor, theOne(machine, 'board'), { processor: 'part', board: 'board' }),
    ...coolerCarries(theOne(machine, 'cooler')?.attributes, processor.attributes, {
      cooler: 'cooler',
      processor: 'part',
    }),
    pictureReason(processor.attributes, machine, 'part'),
  ];
}

/** Grounds for a cooler on the machine's processor: its mount, its watts, its height under the case's side. */
export function coolerReasons(cooler: Named, machine: MachineView): readonly Reason[] {
  const [board, processor] = [theOne(machine, 'board'), theOne(machine, 'processor')];
  const socket = [board, processor]
    .map((part) => part && textOf(part.attributes, 'socket'))
    .find((each) => each !== undefined);
  const sockets = listOf(cooler.attributes, 'sockets');
  const mount = ground(
    'cooler-mount',
    { value: sockets, look: { at: 'part', attribute: 'sockets' } },
    { value: socket, look: { at: 'board', attribute: 'socket' } },
    ({ place }) => (sockets?.includes(String(place)) ? 'yes' : 'no'),
  );
  const height = { value: numberFact(cooler.attributes, 'height'), look: { at: 'part', attribute: 'height' } } as const;
  return [
    mount,
    ...coolerCarries(cooler.attributes, processor?.attributes ?? {}, { cooler: 'part', processor: 'processor' }),
    ground('cooler-height', height, sideOf(machine, 'case', 'cooler-clearance'), atMost),
  ];
}
