import boardSizes from '../../../assets/fit/boardSizes.json' with { type: 'json' };
import memoryTable from '../../../assets/fit/memory.json' with { type: 'json' };
import type { Attributes, PartFacts } from '../../custody/part.ts';
import { type MachineView, partsOf, sideOf, theOne } from '../machineView.ts';
import { atMost, ground, type Reason } from '../reason.ts';
import { listOf, numberFact, textOf } from '../values.ts';
import { coolerCarries, pictureReason, processorOnBoard } from './processor.ts';
import { mainPlug, processorPlugs } from './supply.ts';

/** Grounds for a board around the parts that are in the machine now. */
export function boardReasons(board: PartFacts, machine: MachineView): readonly Reason[] {
  const [processor, cooler, supply] = [
    theOne(machine, 'processor'),
    theOne(machine, 'cooler'),
    theOne(machine, 'supply'),
  ];
  const at = { supply: 'supply', board: 'part' } as const;
  return [
    inCase(board.attributes, machine),
    ...(processor ? processorOnBoard(processor, board, { processor: 'processor', board: 'part' }) : []),
    ...(processor ? [pictureReason(processor.attributes, machine, 'processor')] : []),
    ...mountOf(cooler?.attributes, board.attributes),
    ...(cooler
      ? coolerCarries(cooler.attributes, processor?.attributes, { cooler: 'cooler', processor: 'processor' })
      : []),
    ...partsOf(machine, 'dimm')
      .slice(0, 1)
      .map((module) => modules(board.attributes, module.attributes)),
    ...enoughOf('dimm-slots', partsOf(machine, 'dimm').length, board.attributes),
    ...enoughOf('x16-slots', partsOf(machine, 'card').length, board.attributes),
    mainPlug(
      { supply: supply && textOf(supply.attributes, 'atx-plug'), board: textOf(board.attributes, 'atx-plug') },
      at,
    ),
    processorPlugs(
      supply && numberFact(supply.attributes, 'lead-processor'),
      numberFact(board.attributes, 'processor-plugs'),
      at,
    ),
  ];
}

function inCase(board: Attributes, machine: MachineView): Reason {
  const form = textOf(board, 'form-factor');
  const side = sideOf(machine, 'case', 'takes-boards');
  const takes = side.value === undefined ? undefined : (listOf({ takes: side.value }, 'takes') ?? []);
  const also = boardSizes.alsoTakes.find((row) => row.board === form && takes?.includes(row.case));
  return ground(
    'board-size',
    { value: form, look: { at: 'part', attribute: 'form-factor' } },
    { ...side, value: takes },
    ({ part }) => (takes?.includes(String(part)) || also ? 'yes' : 'no'),
    { source: also && !takes?.includes(form ?? '') ? also.source : 'recorded' },
  );
}

function mountOf(cooler: Attributes | undefined, board: Attributes): readonly Reason[] {
  if (!cooler) return [];
  const sockets = listOf(cooler, 'sockets');
  return [
    ground(
      'cooler-mount',
      { value: textOf(board, 'socket'), look: { at: 'part', attribute: 'socket' } },
      { value: sockets, look: { at: 'cooler', attribute: 'sockets' } },
      ({ part }) => (sockets?.includes(String(part)) ? 'yes' : 'no'),
    ),
  ];
}

function modules(board: Attributes, module: Attributes): Reason {
  const [takes, kind] = [listOf(board, 'memory'), listOf(module, 'memory')];
  return ground(
    'memory-kind',
    { value: takes, look: { at: 'part', attribute: 'memory' } },
    { value: kind, look: { at: 'dimm', attribute: 'memory' } },
    () => (kind?.some((each) => takes?.includes(each)) ? (takes?.length === 1 ? 'yes' : 'unknown') : 'no'),
    { source: memoryTable.rule.source, ifUnknown: [{ at: 'part', attribute: 'memory' }] },
  );
}

/** Every module and card of the machine needs a place; fewer places for drives are the comparison's to tell. */
function enoughOf(attribute: 'dimm-slots' | 'x16-slots', used: number, board: Attributes): readonly Reason[] {
  if (used === 0) return [];
  const has = { value: numberFact(board, attribute), look: { at: 'part', attribute } } as const;
  return [ground(attribute, { value: used, look: { at: 'slot', attribute } }, has, atMost)];
}
