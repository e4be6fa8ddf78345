import type { CommandRequest } from '../../../core/commands/asked.ts';
import type { HereSheet, WordsOnce } from '../../../core/contract/hereSheet.ts';
import { type StaffId, staffId } from '../../../core/ids.ts';
import type { Staff } from '../../../core/job/shop.ts';
import { type People, wayIn } from '../../../core/people/people.ts';
import { pinProblem } from '../../../core/people/pin.ts';
import type { Refusal } from '../../../core/refusal.ts';
import type { OpenShop } from '../../../db/index.ts';
import { carryOut } from '../desk/carryOut.ts';
import type { Tools } from '../desk/tools.ts';
import { lookIn } from './lookIn.ts';
import { type MayAsk, mayAskAt } from './mayAsk.ts';
import { freshWords, readWords } from './recoveryWords.ts';
import { type Cost, givesHash, hashSecret, USUAL_COST } from './secretHash.ts';
import type { ScreenSession } from './session.ts';
import { countTries } from './tries.ts';
import { whoStands } from './whoStands.ts';
import { whyNotRead } from './whyNotRead.ts';

/** Lets people in at screens, one secret at a time, and knows who is at which. */
export type Doorman = {
  readonly here: (session: ScreenSession) => Promise<HereSheet>;
  /** Somebody comes: by their PIN, or by their word where the shop works without. */
  readonly enter: (
    session: ScreenSession,
    given: { readonly who: StaffId; readonly pin: string | null },
  ) => Promise<Refusal | null>;
  readonly lock: (session: ScreenSession) => null;
  /** A hand was on the screen: it does not lock yet. */
  readonly stir: (session: ScreenSession) => Promise<null>;
  /** Sets one's own PIN, or as keeper another's, by one's own. The shop's first comes with its recovery words. */
  readonly setPin: (
    session: ScreenSession,
    given: { readonly who: StaffId; readonly pin: string; readonly own: string | null },
  ) => Promise<Refusal | WordsOnce | null>;
  /** Recovery words anew, for a keeper who says their PIN. */
  readonly makeWords: (session: ScreenSession, given: { readonly own: string }) => Promise<Refusal | WordsOnce>;
  /** A keeper's way back: by the words to a new PIN, and to new words, as these are used up. */
  readonly recover: (
    session: ScreenSession,
    given: { readonly who: StaffId; readonly words: string; readonly pin: string },
  ) => Promise<Refusal | WordsOnce>;
  /** Whether whoever is at this screen may ask a command. */
  readonly mayAsk: (session: ScreenSession) => MayAsk;
  /** Why a procedure is not answered at this screen; null where it is. */
  readonly whyNotRead: (session: ScreenSession, procedure: string) => Promise<Refusal | null>;
};

export type DoormanNeeds = {
  readonly shop: OpenShop;
  readonly tools: Tools;
  /** Milliseconds that only go on. */
  readonly steady: () => number;
  readonly cost?: Cost;
};

/** In whose name the count of wrong tries is written: who tried is not known. */
const SERVICE = staffId('service');

type Secret = { readonly of: string; readonly hash: string | null; readonly missed: number };

export function openDoorman({ shop, tools, steady, cost = USUAL_COST }: DoormanNeeds): Doorman {
  const tries = countTries(steady);
  let last: Promise<unknown> = Promise.resolve();
  /** One secret is looked at at a time: guesses sent together wait for each other's count. */
  const oneByOne = <T>(look: () => Promise<T>): Promise<T> => {
    const next = last.then(look, look);
    last = next.catch(() => undefined);
    return next;
  };
  const write = async (
    { station }: ScreenSession,
    by: StaffId,
    asked: Pick<CommandRequest, 'name' | 'input'>,
  ): Promise<Refusal | null> => {
    const done = await carryOut(shop, tools, station, { ...asked, command: tools.newId(), by } as CommandRequest);
    return done.ok ? null : done.refusal;
  };
  /** Null where the secret is right; else its refusal by `wrong`, or by `waits` without a look. */
  const tryOne = async (
    session: ScreenSession,
    secret: Secret,
    typed: string,
    names: { readonly wrong: Refusal['refused']; readonly waits: Refusal['refused']; readonly name: string },
  ): Promise<Refusal | null> => {
    const tried = secret.of === WORDS ? { words: true as const } : { person: staffId(secret.of) };
    const left = tries.left(secret.of, secret.missed);
    if (left > 0) return { refused: names.waits, name: names.name, seconds: Math.ceil(left / 1000) };
    if (secret.hash !== null && (await givesHash(typed, secret.hash))) {
      tries.met(secret.of);
      if (secret.missed > 0) await write(session, SERVICE, { name: 'noteMet', input: { tried } });
      return null;
    }
    const wait = tries.missed(secret.of, secret.missed);
    await write(session, SERVICE, { name: 'noteMissed', input: { tried } });
    return { refused: names.wrong, name: names.name, seconds: wait / 1000 };
  };
  const tryPin = (
    session: ScreenSession,
    people: People,
    { id, name }: Staff,
    typed: string | null,
  ): Promise<Refusal | null> | Refusal => {
    const { hash, missed } = wayIn(people, id);
    if (typed === null) return { refused: 'pin-needed', name };
    const problem = pinProblem(typed);
    return (
      problem ?? tryOne(session, { of: id, hash, missed }, typed, { wrong: 'pin-wrong', waits: 'pin-waits', name })
    );
  };
  const letIn = (session: ScreenSession, who: StaffId, proved: boolean): null => {
    Object.assign(session, { who, proved, locked: false, stirredAt: steady() });
    return null;
  };
  const setTo = async (
    session: ScreenSession,
    person: StaffId,
    pin: string,
    by: 'first' | 'pin' | 'words',
    asker: StaffId,
  ): Promise<Refusal | WordsOnce | null> => {
    const words = by === 'pin' ? null : freshWords();
    const hash = await hashSecret(pin, cost);
    const input = { person, hash, by, words: words && (await hashSecret(words.join(' '), cost)) };
    const refusal = await write(session, asker, { name: 'setPin', input });
    if (refusal) return refusal;
    tries.met(person);
    if (by !== 'pin') letIn(session, person, true);
    return words && { words };
  };
  return {
    here: async (session) => {
      const { settings, staff, people } = await lookIn(await shop.read());
      const stands = whoStands(session, { settings, staff, people }, steady());
      return {
        use: people.use,
        who: stands.who?.id ?? null,
        locked: stands.locked,
        people: staff.map(({ id, name, roles }) => {
          const { hash, badge } = wayIn(people, id);
          return { id, name, roles, hasPin: hash !== null, badge };
        }),
        lockAfter: stands.lockAfter,
        hasWords: people.words !== null,
      };
    },
    enter: (session, { who, pin }) =>
      oneByOne(async () => {
        const { settings, staff, people } = await lookIn(await shop.read());
        if (!settings) return { refused: 'shop-not-set-up' };
        const person = staff.find(({ id }) => id === who);
        if (!person) return { refused: 'person-gone', person: who };
        if (people.use !== 'on') return letIn(session, who, false);
        if (wayIn(people, who).hash === null) return { refused: 'pin-not-set', name: person.name };
        return (await tryPin(session, people, person, pin)) ?? letIn(session, who, true);
      }),
    lock: (session) => {
      session.locked = true;
      return null;
    },
    stir: async (session) => {
      const { locked } = whoStands(session, await lookIn(await shop.read()), steady());
      if (!locked) session.stirredAt = steady();
      return null;
    },
    setPin: (session, { who, pin, own }) =>
      oneByOne(async () => {
        const inside = await lookIn(await shop.read());
        const { who: me, refusal } = whoStands(session, inside, steady());
        if (refusal) return refusal;
        if (!inside.staff.some(({ id }) => id === who)) return { refused: 'person-gone', person: who };
        const keepers = inside.staff.filter(({ roles }) => roles.includes('keeper'));
        const keeps = keepers.includes(me);
        const problem = pinProblem(pin);
        if (inside.people.use !== 'on') {
          if (keepers.length === 0) return { refused: 'nobody-keeps-the-shop' };
          if (!keeps || who !== me.id)
            return { refused: 'first-pin-is-a-keepers', keepers: keepers.map(({ name }) => name) };
          return problem ?? setTo(session, who, pin, 'first', me.id);
        }
        if (!keeps && who !== me.id) return { refused: 'pin-of-another', name: me.name };
        return problem ?? (await tryPin(session, inside.people, me, own)) ?? setTo(session, who, pin, 'pin', me.id);
      }),
    makeWords: (session, { own }) =>
      oneByOne(async () => {
        const inside = await lookIn(await shop.read());
        const { who: me, refusal } = whoStands(session, inside, steady());
        if (refusal) return refusal;
        if (inside.people.use !== 'on') return { refused: 'pins-are-not-used' };
        if (!me.roles.includes('keeper')) return { refused: 'words-are-for-keepers', name: me.name };
        const wrong = await tryPin(session, inside.people, me, own);
        if (wrong) return wrong;
        const words = freshWords();
        const hash = await hashSecret(words.join(' '), cost);
        return (await write(session, me.id, { name: 'makeRecoveryWords', input: { words: hash } })) ?? { words };
      }),
    recover: (session, { who, words: typed, pin }) =>
      oneByOne(async () => {
        const { staff, people } = await lookIn(await shop.read());
        if (people.use !== 'on') return { refused: 'pins-are-not-used' };
        if (!people.words) return { refused: 'no-recovery-words' };
        const person = staff.find(({ id }) => id === who);
        if (!person) return { refused: 'person-gone', person: who };
        if (!person.roles.includes('keeper')) return { refused: 'words-are-for-keepers', name: person.name };
        const problem = pinProblem(pin);
        if (problem) return problem;
        const words = readWords(typed);
        if (typeof words !== 'string') return words;
        const names = { wrong: 'recovery-words-wrong', waits: 'recovery-words-wait', name: person.name } as const;
        const wrong = await tryOne(session, { of: WORDS, ...people.words }, words, names);
        if (wrong) return wrong;
        const done = await setTo(session, who, pin, 'words', who);
        if (!done) throw new Error('A PIN that was set by the words came without new ones');
        return done;
      }),
    mayAsk: (session) => mayAskAt(session, steady),
    whyNotRead: (session, procedure) => whyNotRead(session, procedure, shop.read, steady()),
  };
}

const WORDS = '';
