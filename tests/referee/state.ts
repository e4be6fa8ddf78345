/** One entry of a log: what was done, and how it ended. */
export type Logged = { readonly step: string; readonly outcome: string };

/** What can be known of a machine on the bench without knowing what is wrong with it. */
export type RefereeState = {
  /** Terms as the owner chose them. */
  readonly told: readonly string[];
  /** What changed last. */
  readonly changed: readonly string[];
  /** Terms at the first start at the bench. */
  readonly seen: readonly string[];
  readonly machine: {
    readonly encrypted?: 'yes' | 'no' | 'unknown';
    readonly keyInHand?: boolean;
    readonly ownMakeSupply?: boolean;
    readonly brick?: boolean;
    readonly modularSupply?: boolean;
    readonly liquidCooler?: 'closed' | 'open-loop';
    readonly array?: number;
    /** The kind of part that was added, where somebody asked. */
    readonly newPart?: string;
  };
  /** Consents given. */
  readonly agreed: readonly string[];
  readonly log: readonly Logged[];
  /** Chance of a fault, 0 to 1, where somebody keeps such a figure. */
  readonly believed?: Readonly<Record<string, number>>;
};

/** By `step` and by `step:outcome`, where in a log it stands last. */
const places = new WeakMap<readonly Logged[], ReadonlyMap<string, number>>();

/** A log is read once for all the sentences that ask about it. */
function placesIn(log: readonly Logged[]): ReadonlyMap<string, number> {
  const known = places.get(log);
  if (known) return known;
  const found = new Map<string, number>();
  log.forEach(({ step, outcome }, at) => {
    if (outcome !== 'could-not') found.set(step, at).set(`${step}:${outcome}`, at);
  });
  places.set(log, found);
  return found;
}

/** Place in the log of the newest entry that one of the points names, `step` or `step:outcome`; -1 when there is none. */
export function newest(state: RefereeState, ...points: readonly string[]): number {
  const found = placesIn(state.log);
  return points.reduce((last, point) => Math.max(last, found.get(point) ?? -1), -1);
}

/** Whether one of the points is in the log. */
export const logged = (state: RefereeState, ...points: readonly string[]): boolean => newest(state, ...points) >= 0;

/** Whether something was found, and nothing since has taken it away again. */
export const stands = (state: RefereeState, found: readonly string[], taken: readonly string[]): boolean =>
  logged(state, ...found) && newest(state, ...found) > newest(state, ...taken);

/** Whether the owner told it or the bench saw it. */
export const complained = (state: RefereeState, ...terms: readonly string[]): boolean =>
  terms.some((term) => state.told.includes(term) || state.seen.includes(term));

export const changed = (state: RefereeState, ...histories: readonly string[]): boolean =>
  histories.some((history) => state.changed.includes(history));

/** Whether a consent is there: on the sheet, or asked for since and given. */
export const agreedTo = (state: RefereeState, consent: string): boolean =>
  state.agreed.includes(consent) || logged(state, `ask-${consent}:yes`);

/** The chances of some faults together; 0 where nobody keeps such figures. */
export const chance = (state: RefereeState, fits: (fault: string) => boolean): number =>
  Object.entries(state.believed ?? {}).reduce((sum, [fault, p]) => (fits(fault) ? sum + p : sum), 0);
