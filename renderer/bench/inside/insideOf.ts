import type { JobSheet } from '../../../core/contract/screens.ts';
import type { Part } from '../../../core/custody/ledger.ts';
import { hasNoLead } from '../../../core/custody/m2.ts';
import type { Place } from '../../../core/custody/place.ts';
import { placeFacts } from '../../../core/custody/readouts/placeFacts.ts';
import type { Drop, InsidePart, InsidePlace, InsideSlot } from '../../kit/inside/model.ts';
import type { Words } from '../../kit/text/words.tsx';

const SHORT = 12;

/** Which kinds are suspect now, and which part the verdict names. */
export type Blamed = { readonly kinds: ReadonlySet<string>; readonly named: string | null };

/** The slots of this job's machine with what is in them now, and what belongs there and is out. */
export function insideSlots(sheet: JobSheet, blame: Blamed, words: Words): readonly InsideSlot[] {
  const { machine } = sheet;
  const part = (id: string | undefined) => sheet.parts.find((one) => one.id === id);
  return machine.slots.map((slot) => {
    const holds = part(machine.inside[slot.id]);
    const belongs = part(machine.belongsIn[slot.id]);
    const away = belongs && belongs.id !== holds?.id && belongs.place.at !== 'slot' ? belongs : undefined;
    const unplugged = machine.unplugged.includes(slot.id) && !hasNoLead(slot);
    return {
      slot,
      holds: holds ? insidePart(holds, sheet, blame, words, unplugged) : null,
      away: away ? insidePart(away, sheet, blame, words) : null,
      seen: holds !== undefined || sheet.job.work.some((work) => work.what === 'census' && work.endedAt !== null),
    };
  });
}

/** A part in the drawing's words. */
export function insidePart(part: Part, sheet: JobSheet, blame: Blamed, words: Words, unplugged = false): InsidePart {
  const dead = part.standing.is === 'dead';
  const named = blame.named === part.id;
  const suspect = part.belongs.to === 'owner' && blame.kinds.has(part.kind);
  const where = part.place.at === 'slot' ? null : placeWords(part.place, words);
  const trial = part.title?.as === 'on-trial' && part.title.job === sheet.job.id;
  return {
    id: part.id,
    kind: part.kind,
    what: part.name,
    ...(part.name.length > SHORT && { short: part.kind }),
    whose: part.belongs.to,
    tag: part.tag,
    standing: dead ? 'dead' : named ? 'named' : suspect ? 'suspect' : 'plain',
    known: part.unread !== true,
    ...(where !== null && { where }),
    ...(trial && { note: words.t('bench.on-trial-since', { time: words.clock(part.since) }) }),
    ...(unplugged && { unplugged: true, note: words.t('bench.unplugged') }),
  };
}

/** Where a part lies, in words. */
export function placeWords(place: Place, { t, dayMonth }: Words): string {
  const { says, facts, day } = placeFacts(place, null);
  return t(`bench.place.${says}`, { ...facts, ...(day !== undefined && { day: dayMonth(day) }) });
}

/** Where a part can be put down: each tray of this job, a bench, and its bin for a part of ours that is inside. */
export function placesFor(
  sheet: JobSheet,
  benches: readonly string[],
  tray: string,
  blame: Blamed,
  words: Words,
): readonly InsidePlace[] {
  const { job, machine } = sheet;
  const here = sheet.parts.filter((part) => machine.parts.includes(part.id) || job.parts.includes(part.id));
  const trays = new Set([tray, ...here.flatMap(({ place }) => (place.at === 'tray' ? [place.tray] : []))]);
  const lying = (on: (place: Place) => boolean) =>
    here.filter((part) => on(part.place)).map((part) => insidePart(part, sheet, blame, words));
  const rigged = lying((place) => place.at === 'rig');
  const ours = here.some((part) => part.belongs.to === 'shop' && part.home !== null && part.place.at !== 'bin');
  return [
    ...[...trays].map((name) => ({
      id: `tray/${name}`,
      name,
      holds: lying((place) => place.at === 'tray' && place.tray === name && place.job === job.id),
    })),
    ...benches
      .map((name) => ({
        id: `bench/${name}`,
        name,
        holds: lying((place) => place.at === 'bench' && place.bench === name),
      }))
      .filter(({ holds }, at) => at === 0 || holds.length > 0),
    ...(rigged.length > 0 ? [{ id: 'rig', name: words.t('bench.second-rig'), holds: rigged }] : []),
    ...(ours ? [{ id: 'home', name: words.t('bench.its-bin'), holds: [] }] : []),
  ];
}

/** The ledger's place for where a part was let go; null where it cannot be put. */
export function placeOfDrop(to: Drop, part: Part, sheet: JobSheet): Place | null {
  if (to.to === 'slot') return { at: 'slot', machine: sheet.machine.id, slot: to.slot };
  const [kind, ...rest] = to.place.split('/');
  const name = rest.join('/');
  if (kind === 'tray') return { at: 'tray', tray: name, job: sheet.job.id };
  if (kind === 'bench') return { at: 'bench', bench: name, job: sheet.job.id };
  return kind === 'home' ? part.home : null;
}
