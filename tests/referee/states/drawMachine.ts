import history from '../../../assets/words/en/history.json' with { type: 'json' };
import symptoms from '../../../assets/words/en/symptoms.json' with { type: 'json' };
import type { Prng } from '../../../core/figures/prng.ts';
import { type CaseLine, zCaseLine } from '../../../core/tracing/cases/form/caseLine.ts';

const TERMS = Object.keys(symptoms);
/** Terms that forbid something; each is as likely as all the others together would make it, so that none is rare. */
const GRAVE = [
  ...['smell', 'smoke-bang', 'leak', 'trips-breaker', 'ransom', 'drive-clicks', 'drive-warning', 'files-broken'],
  ...['asks-key', 'data-wanted', 'twitch-off', 'off-after-seconds', 'restarts-in-use', 'shuts-off-load', 'freezes'],
  ...['settings-lost', 'no-boot-device', 'repair-loop', 'error-at-start', 'stuck-logo', 'no-reaction', 'dark-runs'],
];
const CHANGED = Object.keys(history.changed);
const OFTEN = Object.keys(history.often);
const USUAL_WORD = ['open', 'own-parts-in', 'start-own', 'read', 'copy', 'write', 'risk'];
const MORE_WORD = ['order-to-try', 'send-out'];

export type Draw = {
  /** Uniform in [0, 1). */
  readonly next: () => number;
  readonly chance: (p: number) => boolean;
  readonly oneOf: <T>(list: readonly T[]) => T;
};

/** Draws from a stream of chance. @throws {RangeError} When asked for one of nothing. */
export function drawFrom({ next }: Prng): Draw {
  return {
    next,
    chance: (p) => next() < p,
    oneOf: (list) => {
      const at = Math.floor(next() * list.length);
      const found = list[at];
      if (found === undefined) throw new RangeError('one of nothing');
      return found;
    },
  };
}

/** Any machine that may stand on a bench: what is told of it, what it is, what was agreed. Nothing is done to it yet. */
export function drawMachine(draw: Draw, name: string): CaseLine {
  const term = () => draw.oneOf(draw.chance(0.5) ? GRAVE : TERMS);
  const told = [...new Set(draw.chance(0.35) ? [term(), term()] : [term()])];
  const encrypted = draw.oneOf(['no', 'no', 'yes', 'unknown']);
  const ownPlug = draw.chance(0.12);
  return zCaseLine.parse({
    id: name,
    told: {
      symptoms: told,
      changed: draw.chance(0.6) ? [draw.oneOf(CHANGED)] : [],
      often: draw.chance(0.6) ? ['every-time'] : [draw.oneOf(OFTEN)],
    },
    seen: draw.chance(0.6) ? told : draw.chance(0.5) ? ['fine-here'] : [term()],
    machine: {
      encrypted,
      keyInHand: encrypted === 'yes' && draw.chance(0.3),
      card: draw.chance(0.7),
      drives: draw.chance(0.8) ? 1 : 2,
      modularSupply: draw.chance(0.3),
      firmwareRescue: draw.chance(0.5),
      ...(ownPlug && { ownMakeSupply: true, smallCase: true }),
      ...(ownPlug && draw.chance(0.4) && { brick: true }),
      ...(!ownPlug && draw.chance(0.2) && { liquidCooler: draw.oneOf(['closed', 'closed', 'open-loop']) }),
      ...(draw.chance(0.08) && { array: 2, drives: 2 }),
      ...(draw.chance(0.1) && { riser: true }),
      ...(draw.chance(0.2) && { newPart: draw.oneOf(['card', 'dimm', 'processor', 'drive', 'supply']) }),
    },
    agreed: [...USUAL_WORD.filter(() => !draw.chance(0.06)), ...MORE_WORD.filter(() => draw.chance(0.3))],
  });
}
