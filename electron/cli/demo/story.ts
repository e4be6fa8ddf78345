import machine from '../../../assets/demo/machine.json' with { type: 'json' };
import shop from '../../../assets/demo/shop.json' with { type: 'json' };
import story from '../../../assets/demo/story.json' with { type: 'json' };
import wall from '../../../assets/demo/wall.json' with { type: 'json' };
import type { Attributes, ThingKind } from '../../../core/custody/part.ts';
import type { Slot } from '../../../core/custody/slot.ts';
import type { Reading } from '../../../core/job/work.ts';

/** A part of the owner's, as the census finds it. */
export type FoundPart = {
  readonly slot: string;
  readonly kind: ThingKind;
  readonly name: string;
  readonly attributes: Attributes;
};
export type FoundMachine = {
  readonly slots: readonly Slot[];
  readonly parts: readonly FoundPart[];
  readonly gaps: readonly string[];
};

/** An owner's part put somewhere by hand: named by the slot it sat in when it came. */
export type Put = { readonly own: string; readonly slot: string };

/** One step of the bench as the story tells it. */
export type StoryStep = {
  readonly at: string;
  readonly step?: string;
  readonly prove?: readonly string[];
  readonly where?: string;
  readonly scopes?: readonly string[];
  readonly outcome?: string;
  readonly handsOn: number;
  readonly waiting: number;
  readonly seen?: string;
  readonly ours?: string;
  readonly found?: { readonly thing: string; readonly count: number; readonly where: string };
  readonly census?: boolean;
  readonly readings?: readonly Reading[];
  readonly loaner?: string;
  readonly own?: readonly string[];
  readonly slots?: readonly string[];
  readonly endsWith?: 'as-before' | 'out' | 'loaner-inside' | 'last-slots';
  readonly unplug?: { readonly slots: readonly string[]; readonly out: readonly string[] };
  readonly first?: readonly Put[];
  readonly after?: readonly Put[];
  readonly byTheWay?: string;
  readonly rig?: boolean;
};

/** The invented shop, its wall, its owner and what happened from Tuesday to Thursday. */
export const STORY = {
  shop,
  wall,
  machine: machine as FoundMachine,
  story: {
    ...story,
    firstPowerOn: story.firstPowerOn as readonly StoryStep[],
    tracing: story.tracing as readonly StoryStep[],
  },
} as const;
