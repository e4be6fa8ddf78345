import { z } from 'zod';
import { NEW_PARTS } from '../../live/case.ts';
import type { MachineFacts, Switch } from '../../live/types.ts';
import { USUAL } from './usual.ts';

const usual = USUAL.machine;
const zFact = z.boolean().nullable();
const zCount = z.number().int().min(0).nullable();
/** Facts that the engine takes; where one is missing, as on the usual desktop PC. */
const zFacts = z.object({
  graphicsInProcessor: zFact.default(usual.graphicsInProcessor),
  card: zFact.default(usual.card),
  dimms: zCount.default(usual.dimms),
  slots: zCount.default(usual.slots),
  drives: zCount.default(usual.drives),
  riser: zFact.default(usual.riser),
  addIns: zFact.default(usual.addIns),
  modularSupply: zFact.default(usual.modularSupply),
  firmwareRescue: zFact.default(usual.firmwareRescue),
  encrypted: z.enum(['yes', 'no', 'unknown']).default(usual.encrypted),
  keyInHand: z.boolean().default(usual.keyInHand),
  newPart: z.enum(NEW_PARTS).nullable().default(null),
  supplyWatts: zCount.default(null),
  needsWatts: zCount.default(null),
});

const LIQUID = { closed: 'closed-liquid', 'open-loop': 'open-loop' } as const;
const zSwitch = z.boolean().default(false);
/** Facts that become switches of the assembly. An outside supply counts as a maker's own plug. */
const zSwitches = z.object({
  wideCooler: zSwitch,
  cardCovers: zSwitch,
  glass: zSwitch,
  smallCase: zSwitch,
  solderedMemory: zSwitch,
  solderedProcessor: zSwitch,
  ownMakeSupply: zSwitch,
  brick: zSwitch,
  liquidCooler: z.enum(['closed', 'open-loop']).nullable().default(null),
  battery: zSwitch,
  /** Drives in one; `true` where nobody counted them. */
  array: z.union([z.boolean(), z.number().int().min(0)]).default(false),
  /** Years. */
  age: zCount.default(null),
  /** How the board can speak. */
  codes: z.enum(['none', 'lights', 'digits', 'speaker']).nullable().default(null),
});

/** Years from which a machine counts as aged: "older than five years" in whole ones. Common practice, no source. */
const AGED = 6;

export type Machine = {
  readonly facts: MachineFacts;
  readonly switches: readonly Switch[];
  /** Facts that were given and that the engine does not take. */
  readonly ignored: readonly string[];
};

/** The facts of a case's machine as the engine takes them; `wrong`: the name of one that is none. */
export function machineOf(given: { readonly [fact: string]: unknown }): Machine | { readonly wrong: string } {
  const facts = zFacts.safeParse(given);
  const said = zSwitches.safeParse(given);
  const wrong = facts.error ?? said.error;
  if (!facts.success || !said.success) return { wrong: wrong?.issues[0]?.path.join('.') ?? '' };
  const is = said.data;
  const switches: readonly (Switch | null)[] = [
    is.wideCooler ? 'wide-cooler' : null,
    is.cardCovers ? 'card-covers' : null,
    is.liquidCooler === null ? null : LIQUID[is.liquidCooler],
    is.glass ? 'glass' : null,
    is.smallCase ? 'small-case' : null,
    is.ownMakeSupply || is.brick ? 'own-make-supply' : null,
    is.solderedMemory ? 'soldered-memory' : null,
    is.solderedProcessor ? 'soldered-processor' : null,
    is.brick ? 'outside-supply' : null,
    is.battery ? 'own-battery' : null,
    is.array === true || Number(is.array) > 1 ? 'drive-array' : null,
    is.age !== null && is.age >= AGED ? 'aged' : null,
    is.codes === null ? null : `code-${is.codes}`,
  ];
  return {
    facts: { ...facts.data, valuesMinor: {} },
    switches: switches.filter((one) => one !== null),
    ignored: Object.keys(given).filter((name) => !(name in zFacts.shape) && !(name in zSwitches.shape)),
  };
}
