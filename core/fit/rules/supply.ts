import type { PartFacts } from '../../custody/part.ts';
import { type MachineView, partsOf, sideOf } from '../machineView.ts';
import { among, atMost, ground, type Reason, type Says } from '../reason.ts';
import { listOf, numberFact, textOf } from '../values.ts';
import { cardLeads, onSataLeads, processorRail, supplyBudget } from './power.ts';

/** A maker's own plug (`maker-own`, or `maker-own: name`) is not the standard's, whatever it looks like. */
const makersOwn = (plug: string) => plug.startsWith('maker-own');

const STANDARD = ['24-pin', '10-pin'];

/** A board's main plug against a supply's. Two standard plugs that differ do not fit, nor does a maker's own on one side. */
export function mainPlug(
  plugs: { readonly supply: string | undefined; readonly board: string | undefined },
  at: { supply: 'part' | 'supply'; board: 'part' | 'board' },
): Reason {
  return ground(
    'main-plug',
    { value: plugs.supply, look: { at: at.supply, attribute: 'atx-plug' } },
    { value: plugs.board, look: { at: at.board, attribute: 'atx-plug' } },
    ({ part, place }): Says => {
      const plugs = [String(part), String(place)];
      if (part === place) return plugs.some(makersOwn) ? 'unknown' : 'yes';
      return plugs.some(makersOwn) || plugs.every((plug) => STANDARD.includes(plug)) ? 'no' : 'unknown';
    },
  );
}

/**
 * Has the supply at least as many leads for the processor as the board has plugs? Not known where one of them is not.
 */
export function processorPlugs(
  leads: number | undefined,
  plugs: number | undefined,
  at: { supply: 'part' | 'supply'; board: 'part' | 'board' },
): Reason {
  return ground(
    'processor-plugs',
    { value: plugs, look: { at: at.board, attribute: 'processor-plugs' } },
    { value: leads, look: { at: at.supply, attribute: 'lead-processor' } },
    atMost,
  );
}

/** SATA power plugs that the drives inside ask for. */
function sataLeads(supply: PartFacts, machine: MachineView): readonly Reason[] {
  const drives = onSataLeads(machine);
  if (drives === 0) return [];
  const leads = {
    value: numberFact(supply.attributes, 'lead-sata'),
    look: { at: 'part', attribute: 'lead-sata' },
  } as const;
  return [ground('sata-leads', { value: drives, look: { at: 'drive', attribute: 'bus' } }, leads, atMost)];
}

/** Grounds for a supply with its own lead set in the machine. */
export function supplyReasons(supply: PartFacts, machine: MachineView): readonly Reason[] {
  const at = { supply: 'part', board: 'board' } as const;
  const board = partsOf(machine, 'board')[0]?.attributes ?? {};
  const takes = sideOf(machine, 'case', 'takes-supplies');
  const form = {
    value: textOf(supply.attributes, 'supply-form'),
    look: { at: 'part', attribute: 'supply-form' },
  } as const;
  return [
    ground(
      'supply-form',
      form,
      { ...takes, value: takes.value === undefined ? undefined : listOf({ takes: takes.value }, 'takes') },
      among,
    ),
    mainPlug({ supply: textOf(supply.attributes, 'atx-plug'), board: textOf(board, 'atx-plug') }, at),
    processorPlugs(numberFact(supply.attributes, 'lead-processor'), numberFact(board, 'processor-plugs'), at),
    ...cardLeads(
      supply.attributes,
      partsOf(machine, 'card').map((card) => card.attributes),
      'part',
    ),
    ...sataLeads(supply, machine),
    supplyBudget(machine, supply, 'part'),
    ...processorRail(supply.attributes, partsOf(machine, 'processor')[0]?.attributes),
  ];
}
