import { z } from 'zod';
import machine from '../../../assets/demo/machine.json' with { type: 'json' };
import shop from '../../../assets/demo/shop.json' with { type: 'json' };
import story from '../../../assets/demo/story.json' with { type: 'json' };
import wall from '../../../assets/demo/wall.json' with { type: 'json' };
import { attributesShape, SCOPES, thingKindShape } from '../../../core/custody/part.ts';
import { slotShape } from '../../../core/custody/slot.ts';
import { readingShape } from '../../../core/job/work.ts';
import type { Shaped } from '../../../core/shape.ts';

const zFoundPart = z.strictObject({
  slot: z.string(),
  kind: thingKindShape,
  name: z.string(),
  attributes: attributesShape,
});
/** A part of the owner's, as the census finds it. */
export type FoundPart = Shaped<typeof zFoundPart>;

const zFoundMachine = z.strictObject({
  slots: z.array(slotShape),
  parts: z.array(zFoundPart),
  gaps: z.array(z.string()),
});
export type FoundMachine = Shaped<typeof zFoundMachine>;

const zPut = z.strictObject({ own: z.string(), slot: z.string() });
/** An owner's part put somewhere by hand: named by the slot it sat in when it came. */
export type Put = Shaped<typeof zPut>;

const zStoryStep = z.strictObject({
  at: z.string(),
  step: z.string().exactOptional(),
  prove: z.array(z.string()).exactOptional(),
  where: z.string().exactOptional(),
  scopes: z.array(z.enum(SCOPES)).exactOptional(),
  outcome: z.string().exactOptional(),
  handsOn: z.number(),
  waiting: z.number(),
  seen: z.string().exactOptional(),
  ours: z.string().exactOptional(),
  found: z.strictObject({ thing: z.string(), count: z.number(), where: z.string() }).exactOptional(),
  census: z.boolean().exactOptional(),
  readings: z.array(readingShape).exactOptional(),
  loaner: z.string().exactOptional(),
  own: z.array(z.string()).exactOptional(),
  slots: z.array(z.string()).exactOptional(),
  endsWith: z.enum(['as-before', 'out', 'loaner-inside', 'last-slots']).exactOptional(),
  unplug: z.strictObject({ slots: z.array(z.string()), out: z.array(z.string()) }).exactOptional(),
  first: z.array(zPut).exactOptional(),
  after: z.array(zPut).exactOptional(),
  byTheWay: z.string().exactOptional(),
  rig: z.boolean().exactOptional(),
});
/** One step of the bench as the story tells it. */
export type StoryStep = Shaped<typeof zStoryStep>;

const zWallPart = z.strictObject({
  no: z.string(),
  tag: z.string().nullable(),
  kind: thingKindShape,
  name: z.string(),
  attributes: attributesShape,
  /** `on`: since when it is known good, as the clock on the wall showed it. */
  standing: z.looseObject({ is: z.string(), on: z.string().exactOptional() }),
  place: z.looseObject({ at: z.string() }),
  valueMinor: z.number(),
});
/** A part of the shop's, as it hangs on the wall before the story begins. */
export type StoryPart = Shaped<typeof zWallPart>;

/** The invented shop, its wall, its owner and what happened from Tuesday to Thursday. */
export const STORY = {
  shop,
  wall: z.array(zWallPart).readonly().parse(wall),
  machine: zFoundMachine.parse(machine),
  story: {
    ...story,
    firstPowerOn: z.array(zStoryStep).readonly().parse(story.firstPowerOn),
    tracing: z.array(zStoryStep).readonly().parse(story.tracing),
  },
} as const;
