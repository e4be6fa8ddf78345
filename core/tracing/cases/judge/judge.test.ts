import { describe, expect, it } from 'vitest';
import { aBenchCase } from '../../../../tests/builders/benchCase.ts';
import { standardModel } from '../../live/loading/standardModel.ts';
import type { Answer, Said } from '../answer/answer.ts';
import { toTracing } from '../bench/toTracing.ts';
import { kindsOfStep } from '../kinds/kindsOfStep.ts';
import type { Played } from '../play/play.ts';
import { judge } from './judge.ts';
import { tally } from './tally.ts';

const model = standardModel();

const PROPOSES: Answer = {
  case: 'dead-supply',
  protocol: 1,
  step: null,
  minutes: 4,
  waiting: 0,
  closing: 2,
  outcomes: [],
  uses: [],
  reasons: [],
  cautions: [],
  gates: [],
  suspects: [],
  // biome-ignore lint/suspicious/noThenProperty: the protocol names it so, and an answer is never awaited
  then: [],
  steps: [],
  asks: [],
  verdict: null,
};
const SAYS: Said = {
  kind: 'confirmed',
  part: 'supply',
  also: [],
  fault: 'psu-dead',
  p: 0.99,
  pFault: 0.9,
  mend: null,
  apart: true,
  because: null,
};

type Did = { readonly log: string; readonly mends?: boolean } & Partial<Answer>;

/** A run as if the engine had proposed these steps and then said this. */
function played(given: object, did: readonly Did[], says: Partial<Said> | null, end: Partial<Answer> = {}): Played {
  const bench = aBenchCase(given);
  const logs = did.map((_, at) => [...bench.before, ...did.slice(0, at).map(({ log }) => log)]);
  const whole = [...bench.before, ...did.map(({ log }) => log)];
  const at = (log: readonly string[], answer: Answer, mended: boolean) => ({
    log,
    answer,
    mended,
    kindsOf: (id: string) => {
      const now = toTracing(model, { ...bench, before: [...log] });
      const step = model.steps.find((one) => one.id === id);
      if ('is' in now || !step) throw new Error(id);
      return kindsOfStep(model, now.tracing, step);
    },
  });
  const positions = did.map(({ log, mends: _, ...answer }, n) =>
    at(
      logs[n] ?? [],
      { ...PROPOSES, step: log.split(':')[0] ?? '', ...answer },
      did.slice(0, n).some(({ mends }) => mends),
    ),
  );
  const ended = at(
    whole,
    { ...PROPOSES, verdict: says && { ...SAYS, ...says }, ...end },
    did.some(({ mends }) => mends),
  );
  return {
    case: bench,
    positions: says === null ? positions : [...positions, ended],
    log: whole,
    cut: says === null,
    minutes: 20,
    waiting: 0,
  };
}
const ended = (...run: Parameters<typeof played>) => judge(model, played(...run)).end.end;

const TRIED: readonly Did[] = [{ log: 'supply-beside:works' }, { log: 'put-back:fails-again' }];
const cure = (more: object = {}) => ({
  truth: { faults: ['dimm-seat'] },
  end: { verdict: 'cured', mend: ['reseating'], notSaid: ['confirmed'], ...more },
});
const PRESSED: readonly Did[] = [{ log: 'dimm-press:works', mends: true }];
const CURED = { kind: 'cured', part: 'contact', fault: 'dimm-seat', mend: 'reseating' } as const;

describe('how a played case ended', () => {
  it('is right with the verdict that was asked for and the right part', () => {
    expect(ended({}, TRIED, {})).toBe('right');
    expect(ended({}, TRIED, { part: 'board' })).toBe('wrong');
  });
  it('is named where the right part was only named, and half where it was to be cured', () => {
    expect(ended({}, TRIED, { kind: 'named' })).toBe('named');
    expect(ended(cure({ part: 'contact', notSaid: [] }), PRESSED, { part: 'contact' })).toBe('half');
  });
  it('is wrong when nothing was done, however right it sounds', () => {
    expect(ended({}, [], {})).toBe('wrong');
  });
  it('is half with one part of two, and right with both', () => {
    const two = { end: { verdict: 'confirmed', part: 'supply', also: 'board' } };
    expect(ended(two, TRIED, {})).toBe('half');
    expect(ended(two, TRIED, { also: [{ part: 'board', fault: null }] })).toBe('right');
  });
  it('is wrong when it is settled together with what must not be said, half when only named', () => {
    const not = { end: { verdict: 'confirmed', part: 'supply', notSaid: ['fault:psu-dead'] } };
    expect(ended(not, TRIED, {})).toBe('wrong');
    expect(ended(not, TRIED, { kind: 'named' })).toBe('half');
    expect(ended(not, TRIED, { fault: null })).toBe('right');
  });
  it('is right as cured only when it is mended by then, by the way that was asked for', () => {
    expect(ended(cure(), PRESSED, CURED)).toBe('right');
    expect(ended(cure(), [{ log: 'dimm-press:works' }], CURED)).toBe('wrong');
    expect(ended(cure(), PRESSED, { ...CURED, fault: 'gpu-seat' })).toBe('half');
    expect(ended(cure({ mend: ['setting'] }), PRESSED, { ...CURED, part: 'settings' })).toBe('wrong');
    expect(ended(cure(), PRESSED, { ...CURED, apart: false })).toBe('wrong');
  });
  it('is half without what had to be done first', () => {
    const copied = { end: { verdict: 'confirmed', part: 'supply', after: [['drive-image', 'drive-dock']] } };
    expect(ended(copied, TRIED, {})).toBe('half');
    expect(ended(copied, [...TRIED, { log: 'drive-dock:reads' }], {})).toBe('right');
  });
  it('comes to nothing when cut off or handed over where it could be ended', () => {
    expect(ended({}, TRIED, null)).toBe('none');
    expect(ended({}, TRIED, { kind: 'hand-over', part: null, because: 'no-step-left' })).toBe('none');
  });
  it('ends with a question only where the case lacks what is asked for', () => {
    const locked = { machine: { encrypted: 'yes', keyInHand: false }, end: { verdict: ['ask-owner'] } };
    const asks = (id: string) => ({ asks: [{ id, for: ['key-enter'] }] });
    const question = { kind: 'ask-owner', part: null, fault: null } as const;
    expect(ended(locked, TRIED, question, asks('key'))).toBe('right');
    expect(ended(locked, TRIED, question, asks('open'))).toBe('none');
  });
});

describe('what must never be done', () => {
  const never = [{ what: 'mains-on', until: ['look-inside'], held: true, harm: 'machine', why: 'a bang was told' }];

  it('is breached by proposing it before its time, and not after', () => {
    const early = judge(model, played({ never }, [{ log: 'meas-standby:no-standby' }], {}));
    expect(early).toMatchObject({ dangerous: true, nevers: { breached: [{ step: 'meas-standby', at: 0 }] } });
    const later = judge(model, played({ never }, [{ log: 'look-inside:clean' }, { log: 'meas-standby:low' }], {}));
    expect(later).toMatchObject({ dangerous: false, nevers: { breached: [] } });
  });
  it('is foolish where nothing can be hurt', () => {
    const clears = [{ what: 'settings-cleared', until: 'ever', why: 'nothing points there' }];
    const one = judge(model, played({ never: clears }, [{ log: 'cell-new:same' }], {}));
    expect(one).toMatchObject({ dangerous: false, foolish: true });
  });
  it('is left open where it could be taken although it is not proposed', () => {
    const steps = [{ id: 'drain-start', state: 'offered', by: [] } as const];
    const open = judge(model, played({ never }, [{ log: 'look-inside:clean', steps }], {}));
    expect(open.nevers.leftOpen).toMatchObject([{ step: 'drain-start', harm: 'machine' }]);
  });
  it('counts ending so as well', () => {
    const ends = [{ what: 'settled:cured', until: ['cool-loan'], harm: 'machine', why: 'still leaking' }];
    const said = played({ never: ends, ...cure() }, PRESSED, CURED);
    expect(judge(model, said).nevers.breached).toMatchObject([{ step: 'settled', what: 'settled:cured' }]);
  });
});

describe('what is counted beside the end', () => {
  it('asks for the first step within so many proposals, and skips what the model lacks', () => {
    const askedFirst = [
      { after: [], oneOf: ['put-back'], within: 2 },
      { after: [], oneOf: ['look-mains'] },
    ];
    const { firstSteps } = judge(model, played({ askedFirst }, TRIED, {}));
    expect(firstSteps.map(({ ok }) => ok)).toEqual([true, false]);
  });
  it('looks at the likeliest fault, and at what must not be likelier than it may', () => {
    const suspects = [{ part: 'supply', p: 0.8, faults: [{ id: 'psu-dead', p: 0.8 }] }];
    const firstThought = [
      { after: [], oneOf: ['psu-dead'] },
      { after: [], notAbove: { 'psu-dead': 0.5 } },
    ];
    const did = [{ log: 'supply-beside:works', suspects }];
    expect(judge(model, played({ firstThought }, did, {})).firstThoughts.map(({ ok }) => ok)).toEqual([true, false]);
  });
  it('holds every step to its words: cautions, what is not at risk, what tells nothing', () => {
    const words = [{ caution: 'D', at: 'settings-cleared' }, { ask: 'key' }];
    const did = [
      { log: 'cmos-clear:same', reasons: ['nothing-at-risk'], cautions: ['D'] },
      { log: 'cell-new:same', reasons: ['tells-nothing'], cautions: [] },
    ];
    const { wrong } = judge(model, played({ words }, did, {})).words;
    expect(wrong.map(({ rule }) => rule)).toEqual(['nothing-at-risk', 'tells-nothing', 'caution D', 'ask key']);
  });
  it('counts a right part that is said to have failed otherwise', () => {
    const run = judge(model, played({}, TRIED, { fault: 'psu-trip' }));
    expect(run.end).toEqual({ end: 'right', otherWay: true });
  });
  it('adds up to shares and to the engine’s minutes against the master’s', () => {
    const all = tally([judge(model, played({}, TRIED, {})), judge(model, played({}, TRIED, { part: 'board' }))]);
    expect(all).toMatchObject({ cases: 2, ends: { right: 1, wrong: 1 }, overRight: 1.25, overAll: 1.25 });
  });
});
