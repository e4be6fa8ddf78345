import { createHash } from 'node:crypto';
import shopOf from '../../assets/demo/shop.json' with { type: 'json' };
import story from '../../assets/demo/story.json' with { type: 'json' };
import type { Owner } from '../../core/approval/owner.ts';
import type { Asking } from '../../core/commands/kernel/asking.ts';
import { applyMachine } from '../../core/custody/machine.ts';
import type { Tag } from '../../core/custody/part.ts';
import type { View } from '../../core/entries/view.ts';
import type { JobId, MachineId, OwnerId, StaffId } from '../../core/ids.ts';
import { type Job, newJob } from '../../core/job/job.ts';
import type { ShopSettings } from '../../core/job/shop.ts';
import { personal } from '../../core/journal/personal.ts';
import { noPeople } from '../../core/people/people.ts';
import type { Stage } from '../../core/stage.ts';
import { epochMs } from '../../core/time.ts';
import { seededChance } from '../../electron/cli/demo/seededChance.ts';
import { openEngine } from '../../electron/service/openEngine.ts';
import { openTools } from '../../electron/service/openTools.ts';
import { fewSteps } from './desk.ts';
import { takenInBody } from './takenInBody.ts';

const owner = 'judith' as OwnerId;
const machine = 'm' as MachineId;
const held = <T>(value: T) => personal('contact', owner, value);

export const judith: Owner = {
  id: owner,
  name: held(story.owner.name),
  reach: held({ phone: story.owner.phone, mail: null, first: 'phone' as const }),
  address: null,
  language: 'en',
  kind: { is: 'person' },
  mayCollect: held<readonly string[]>([]),
};

const tag = story.tag as Tag;
const taken = takenInBody({ owner, machine, tag }, story.told);

/** A job as it was taken in, put at a stage, with whatever else is said of it. */
export function aJobAt(stage: Stage, over: Partial<Job> = {}): Job {
  const job = newJob('j' as JobId, epochMs(0), 'bram', taken);
  return { ...job, stage, stages: [...job.stages, { stage, at: epochMs(0), why: 'test' }], ...over };
}

/** What the shop of the demo has set. */
export const shopSettings = shopOf.settings as unknown as ShopSettings;

/** What a command looks at for that job: the shop, its owner, its machine, no parts. */
export const viewOf = (job: Job, of: Owner = judith): View => ({
  shop: { settings: shopSettings, staff: [], models: [], learnt: null },
  people: noPeople,
  job,
  elsewhere: [],
  olderJob: null,
  here: null,
  owner: of,
  machine: applyMachine(null, {
    stream: `machine:${machine}`,
    kind: 'machine-known',
    body: { id: machine, owner, tag, called: story.machine.called, serial: null },
  }),
  rigs: new Map(),
  parts: new Map(),
  enquiry: null,
  paperCounts: new Map(),
});

const words = openTools(openEngine(), () => null);

/** Who asks: the bench, at ten seconds past the start of time unless said otherwise. */
export const askingOf = (at = 10_000): Asking => ({
  ...seededChance(7),
  at: epochMs(at),
  by: 'bram' as StaffId,
  sha256: (text) => createHash('sha256').update(text, 'utf8').digest('hex'),
  lastHead: null,
  tracing: fewSteps,
  jobWords: words.jobWords,
  paperSetting: words.paperSetting,
});
