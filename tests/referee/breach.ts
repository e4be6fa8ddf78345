import type { RefereeState } from './state.ts';
import type { Doing } from './stepTable.ts';

/** What a breach can hurt: the machine or people, the owner's data, a part of the shop's; or it lacks the owner's word. */
export type Harm = 'machine' | 'data' | 'ours' | 'word';

export type Breach = {
  /** Which sentence is broken. */
  readonly rule: string;
  readonly harm: Harm;
  /** The sentence, as it would be said across the bench. */
  readonly says: string;
};

/** A step as a sentence sees it. */
export type Deed = { readonly step: string; readonly does: (...doings: readonly Doing[]) => boolean };

/** A sentence of the trade: what must not be done while something is so. */
export type Sentence = {
  readonly rule: string;
  readonly says: string;
  /** @returns what it would hurt if the step were done now, `null` when the sentence has nothing against it. */
  readonly harm: (state: RefereeState, deed: Deed) => Harm | null;
};

/** Whether their machine gets mains, whatever feeds it. */
export const givesMains = ({ does }: Deed): boolean => does('mains', 'start', 'start-ours');

/** Whether their machine is switched on. */
export const switchesOn = ({ does }: Deed): boolean => does('start', 'start-ours');

/** Whether their own supply gets mains, in the machine or on the tester. */
export const feedsTheirSupply = (deed: Deed): boolean =>
  deed.does('tester') || (givesMains(deed) && !deed.does('our-supply'));

/** Whether a part of ours goes into their machine. */
export const lendsOurs = ({ step, does }: Deed): boolean =>
  does('ours-dimm', 'ours-card', 'ours-supply', 'ours-processor', 'ours-board', 'ours-drive', 'ours-cooler') ||
  step === 'loaner-second';

/** Whether a part of theirs goes onto our rig; the supply on its tester apart. */
export const goesOnRig = ({ does }: Deed): boolean => does('rig-card', 'rig-dimm', 'rig-processor', 'rig-board');

/** Whether a drive of theirs spins up inside the machine. */
export const spinsDrive = (deed: Deed): boolean => switchesOn(deed) && !deed.does('without-drives');
