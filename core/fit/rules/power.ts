import power from '../../../assets/fit/power.json' with { type: 'json' };
import { isM2Module } from '../../custody/m2.ts';
import type { Attributes, PartFacts } from '../../custody/part.ts';
import { type MachineView, partsOf, theOne } from '../machineView.ts';
import { atMost, ground, type LookAt, type Reason } from '../reason.ts';
import { listOf, numberFact, textOf } from '../values.ts';

type At = 'part' | 'supply' | 'card' | 'processor';
const LEADS = { '8-pin': 'lead-card-8', '6-pin': 'lead-card-6', '12v-2x6': 'lead-card-12v-2x6' } as const;
type Plug = keyof typeof LEADS;

/** What a plug may carry for as long as it likes, in watts. */
export const plugWatts = (plug: string): number | undefined => power.plugs.find((row) => row.plug === plug)?.watts;

/** A card's watts against what its slot and its own plugs may carry together. */
export function connectorRating(card: Attributes): Reason {
  const plugs = listOf(card, 'power-plugs');
  const each = plugs?.map(plugWatts);
  const given = each?.every((watts) => watts !== undefined)
    ? each.reduce((sum, watts) => sum + watts, power.slot.watts)
    : undefined;
  return ground(
    'connector-rating',
    { value: numberFact(card, 'watts'), look: { at: 'part', attribute: 'watts' } },
    { value: given, look: { at: 'part', attribute: 'power-plugs' } },
    atMost,
    { source: power.budget.source },
  );
}

/** Whether a supply has, as leads of its own, the card plugs that all these cards ask for. A 6+2 lead serves either plug. */
export function cardLeads(supply: Attributes | undefined, cards: readonly Attributes[], at: At): readonly Reason[] {
  const lists = cards.map((card) => listOf(card, 'power-plugs'));
  if (lists.includes(undefined)) {
    return [
      {
        fact: 'card-leads',
        says: 'unknown',
        source: 'recorded',
        part: null,
        place: null,
        look: [{ at: at === 'part' ? 'card' : 'part', attribute: 'power-plugs' }],
      },
    ];
  }
  const plugs = lists.flatMap((list) => list ?? []);
  const asked = (plug: Plug) => plugs.filter((each) => each === plug).length;
  const has = (plug: Plug) => (supply ? numberFact(supply, LEADS[plug]) : undefined);
  const lookAt: At = at === 'part' ? 'part' : 'supply';
  const look = (plug: Plug): LookAt => ({ at: lookAt, attribute: LEADS[plug] });
  const reasons: Reason[] = [];
  for (const plug of ['12v-2x6', '8-pin'] as const) {
    if (asked(plug) > 0) reasons.push(leadReason(plug, asked(plug), has(plug), [look(plug)]));
  }
  if (asked('6-pin') > 0) {
    const eights = has('8-pin');
    const spare = eights === undefined ? undefined : Math.max(0, eights - asked('8-pin'));
    const sixes = has('6-pin');
    const sure = (spare ?? 0) + (sixes ?? 0) >= asked('6-pin');
    const given = sure || (spare !== undefined && sixes !== undefined) ? (spare ?? 0) + (sixes ?? 0) : undefined;
    reasons.push(leadReason('6-pin', asked('6-pin'), given, [look('6-pin'), look('8-pin')]));
  }
  return [...reasons, ...twelveTwoBySix(supply, cards, lookAt)];
}

function leadReason(plug: Plug, asked: number, given: number | undefined, look: readonly LookAt[]): Reason {
  const says = given === undefined ? 'unknown' : asked <= given ? 'yes' : 'no';
  return {
    fact: 'card-leads',
    says,
    source: 'recorded',
    part: asked,
    place: given ?? null,
    look: says === 'unknown' ? look : [],
    figures: { plug },
  };
}

/** The lead of a 12V-2x6 plug says how much of 600 W it grants; a card that needs more than the least must find out. */
function twelveTwoBySix(supply: Attributes | undefined, cards: readonly Attributes[], at: At): readonly Reason[] {
  return cards
    .filter((card) => listOf(card, 'power-plugs')?.includes('12v-2x6'))
    .map((card) => {
      const watts = numberFact(card, 'watts');
      const throughPlug = watts === undefined ? undefined : Math.max(0, watts - power.slot.watts);
      return ground(
        'lead-grants',
        { value: throughPlug, look: { at: 'card', attribute: 'watts' } },
        {
          value: supply && numberFact(supply, 'lead-card-12v-2x6-watts'),
          look: { at, attribute: 'lead-card-12v-2x6-watts' },
        },
        atMost,
        { source: power.twelveTwoBySix.source },
      );
    });
}

/** What the machine asks of its supply, in watts, against what the supply can give. */
export function supplyBudget(machine: MachineView, supply: PartFacts | undefined, at: At): Reason {
  const takers = partsOf(machine, 'processor', 'card', 'add-in');
  const watts = takers.map((part) => numberFact(part.attributes, 'watts'));
  const unknown = takers.find((_, index) => watts[index] === undefined);
  const noProcessor = theOne(machine, 'processor') === undefined;
  const known = watts.reduce<number>((sum, each) => sum + (each ?? 0), power.rest.watts);
  const given = supply && numberFact(supply.attributes, 'watts');
  // What is known alone may already be too much; that it is little proves nothing while a taker is unknown.
  const asked = (unknown === undefined && !noProcessor) || (given !== undefined && known > given) ? known : undefined;
  return ground(
    'supply-watts',
    { value: asked, look: { at: unknown?.kind ?? 'processor', attribute: 'watts' } },
    { value: given, look: { at, attribute: 'watts' } },
    atMost,
    { source: power.rest.source, figures: { rest: power.rest.watts } },
  );
}

/** A supply that states the amps of its processor rail, against its processor's class. Nothing where either is not stated. */
export function processorRail(supply: Attributes, processor: Attributes | undefined): readonly Reason[] {
  const [amps, watts] = [numberFact(supply, 'amps-12v2'), processor && numberFact(processor, 'watts')];
  if (amps === undefined || watts === undefined) return [];
  const row = power.processorRail.toSorted((a, b) => a.watts - b.watts).find((each) => each.watts >= watts);
  if (!row) return [];
  const look = { at: 'part', attribute: 'amps-12v2' } as const;
  return [
    ground('processor-rail', { value: row.amps, look }, { value: amps, look }, atMost, {
      source: row.source,
      figures: { class: row.watts },
    }),
  ];
}

/** How many drives inside hang on a SATA lead of the supply: M.2 modules are fed by the board. */
export const onSataLeads = (machine: MachineView): number =>
  partsOf(machine, 'drive', 'optical-drive').filter(
    (part) => textOf(part.attributes, 'bus') === 'SATA' && !isM2Module(part),
  ).length;

/** A lead belongs to its supply. One that looks the same as another's stays unknown for good: only its own is a yes. */
export function leadReasons(lead: Attributes, machine: MachineView): readonly Reason[] {
  const supply = theOne(machine, 'supply');
  return [
    ground(
      'leads-of',
      { value: textOf(lead, 'leads-of'), look: { at: 'part', attribute: 'leads-of' } },
      { value: supply?.name, look: { at: 'supply', attribute: 'name' } },
      ({ part, place }) => (part === place ? 'yes' : 'unknown'),
      { source: power.leadsOfAnother.source, ifUnknown: [{ at: 'part', attribute: 'leads-of' }] },
    ),
  ];
}
