import type { PreviewAsked } from '../../../core/commands/asked.ts';
import { WHILE_LOCKED, whyNotAsked } from '../../../core/commands/whoMay.ts';
import type { Refusal } from '../../../core/refusal.ts';
import { type LooksIn, lookIn } from './lookIn.ts';
import type { ScreenSession } from './session.ts';
import { whoStands } from './whoStands.ts';

/** Why a command may not be asked at this screen; null where it may. */
export type MayAsk = (read: LooksIn, asked: PreviewAsked) => Promise<Refusal | null>;

/**
 * Who asks is whoever is at the screen; who they were taken to be when it was asked is only held against that. A step that
 * they began takes its outcome though the screen is locked. A shop that is not set up is opened by one of those it names.
 */
export const mayAskAt =
  (session: ScreenSession, steady: () => number): MayAsk =>
  async (read, asked) => {
    const inside = await lookIn(read);
    if (!inside.settings && asked.name === 'openShop') return opensAsOneOfIts(asked);
    const { who, locked, refusal } = whoStands(session, inside, steady());
    if (!who) return refusal ?? { refused: 'nobody-is-here' };
    if (asked.by !== who.id) {
      const taken = inside.staff.find(({ id }) => id === asked.by)?.name ?? asked.by;
      return { refused: 'not-who-is-here', asked: taken, here: who.name };
    }
    if (locked && !(await isOwnStep(read, asked))) return refusal;
    return whyNotAsked(asked.name, who, inside.people.use);
  };

/**
 * A session of this computer's own, for the command line and the demo: whoever is named must be of the shop and have the
 * role, where roles count. No PIN is asked, as whoever starts a program on the shop's folder has the disk.
 */
export const mayAskLocally: MayAsk = async (read, asked) => {
  const { settings, staff, people } = await lookIn(read);
  if (!settings && asked.name === 'openShop') return opensAsOneOfIts(asked);
  const who = staff.find(({ id }) => id === asked.by);
  return who ? whyNotAsked(asked.name, who, people.use) : { refused: 'person-gone', person: asked.by };
};

const opensAsOneOfIts = ({ input, by }: PreviewAsked<'openShop'>): Refusal | null =>
  input.staff.some(({ id }) => id === by) ? null : { refused: 'person-gone', person: by };

/** The outcome of a step that whoever asks has under way, or their clocks, which stop with the screen. */
async function isOwnStep(read: LooksIn, asked: PreviewAsked): Promise<boolean> {
  if (asked.name !== 'finishWork') return WHILE_LOCKED.has(asked.name);
  const { job: id, run } = asked.input;
  const job = await read.load('job', id);
  const work = job?.work.find((one) => one.run === run);
  return work !== undefined && work.by === asked.by && work.endedAt === null && !work.struck;
}
