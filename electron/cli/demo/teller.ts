import type { CommandName } from '../../../core/commands/commands.ts';
import { signShown, toBeSigned } from '../../../core/commands/kernel/contentHashes.ts';
import { zAsked, zPreview } from '../../../core/contract/contract.ts';
import type { JobSheet } from '../../../core/contract/screens.ts';
import type { JobId, PartId } from '../../../core/ids.ts';
import type { Executed, OpenShop } from '../../../db/index.ts';
import { carryOut } from '../../service/desk/carryOut.ts';
import type { Engine } from '../../service/desk/estimating/engine.ts';
import { followWithEstimate } from '../../service/desk/estimating/estimates.ts';
import { preview } from '../../service/desk/preview.ts';
import { jobSheet } from '../../service/desk/sheets/jobSheet.ts';
import type { Tools } from '../../service/desk/tools.ts';
import { mayAskLocally } from '../../service/people/mayAsk.ts';
import type { StoryClock } from './clock.ts';

/** A command that the story expected to go through was refused: the story and the rules do not agree. */
export class StoryRefused extends Error {
  override readonly name = 'StoryRefused';
}

/** Tells a story through the shop's own door: asks commands as people do, and prints what was done. */
export type Teller = {
  readonly clock: StoryClock;
  readonly ask: (by: string, name: CommandName, input: unknown) => Promise<Executed>;
  /** Asks in the name of the job that is told. */
  readonly forJob: (by: string, name: CommandName, input: Readonly<Record<string, unknown>>) => Promise<Executed>;
  readonly sheet: () => Promise<JobSheet>;
  readonly setJob: (job: JobId) => void;
  readonly job: () => JobId;
  /** The owner's part that sat in a slot when the machine came. */
  readonly own: (slot: string) => Promise<PartId>;
  /** Remembers a shop part under its number on the wall. */
  readonly remember: (no: string, part: PartId) => void;
  readonly part: (no: string) => PartId;
  readonly say: (line: string) => void;
};

export type TellerNeeds = {
  readonly shop: OpenShop;
  readonly tools: Tools;
  readonly engine: Engine;
  readonly clock: StoryClock;
  readonly zone: string;
  readonly print: (line: string) => void;
};

export function openTeller({ shop, tools, engine, clock, zone, print }: TellerNeeds): Teller {
  let asked = 0;
  let job: JobId | null = null;
  const byNumber = new Map<string, PartId>();
  const time = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    weekday: 'short',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  });
  const theJob = (): JobId => {
    if (!job) throw new Error('no job yet');
    return job;
  };
  const sheet = async (): Promise<JobSheet> => {
    const found = await jobSheet(await shop.read(), theJob(), clock.now());
    if (!found) throw new Error('the job is gone');
    return found;
  };
  /** The hash of what an owner is shown before they sign; a refusal is left to the command itself. */
  const shownHash = async (by: string, name: CommandName, input: unknown): Promise<string> => {
    const shown = await preview(shop, tools, zPreview.parse({ by, name, input }), clock.now());
    return 'refused' in shown ? '' : shown.contentHash;
  };
  const ask: Teller['ask'] = async (by, name, input) => {
    asked += 1;
    const signed = toBeSigned(input) ? signShown(input, await shownHash(by, name, input)) : input;
    const checked = zAsked.parse({ command: `demo-${asked}`, by, name, input: signed });
    const done = await carryOut(shop, tools, 'demo', checked, mayAskLocally);
    if (!done.ok) throw new StoryRefused(`${name} at ${time.format(clock.now())}: ${JSON.stringify(done.refusal)}`);
    await followWithEstimate({ shop, tools, engine }, checked, done);
    return done;
  };
  return {
    clock,
    ask,
    forJob: (by, name, input) => ask(by, name, { job: theJob(), ...input }),
    sheet,
    setJob: (next) => {
      job = next;
    },
    job: theJob,
    own: async (slot) => {
      const { machine } = await sheet();
      const part = machine.atTakingIn[slot];
      if (!part) throw new Error(`nothing sat in ${slot}`);
      return part;
    },
    remember: (no, part) => void byNumber.set(no, part),
    part: (no) => {
      const part = byNumber.get(no);
      if (!part) throw new Error(`no part ${no} on the wall`);
      return part;
    },
    say: (line) => print(`${time.format(clock.now())}  ${line}`),
  };
}
