import { describe, expect, it } from 'vitest';
import { afterDoing, aTracingCase, WALL } from '../../../../tests/builders/tracingCase.ts';
import { posteriorOf } from '../belief/posterior.ts';
import { standardModel } from '../loading/standardModel.ts';
import { knownStep } from '../model/special.ts';
import type { TracingCase } from '../types.ts';
import { shareOf } from '../verdict/blame.ts';
import { CONFIRMED_FROM } from '../verdict/proof.ts';
import { verdictAfter } from '../verdict/verdictAfter.ts';
import { offerStep } from './offerStep.ts';
import { reasonFor } from './reasonFor.ts';

const model = standardModel();

/** A machine looked into, its first start watched, and what was done then: "step:outcome". */
function bench(seen: string, group: string, ...done: readonly string[]): TracingCase {
  const told = { symptoms: [seen], changed: [], often: ['every-time'], onlyWhen: [], rate: null };
  const looked = afterDoing(model, aTracingCase({ told }), 'look-inside', 'clean');
  const started = afterDoing(model, { ...looked, seen: [seen] }, 'watch-start', group);
  return done.reduce((tracing, line) => {
    const [id = '', outcome = ''] = line.split(':');
    const step = knownStep(model, id);
    const kinds = [step?.handling.borrows, ...(step?.handling.alsoBorrows ?? [])];
    const ours = WALL.filter((one) => kinds.includes(one.kind) && model.badLoaner[one.kind]).slice(0, 1);
    const works = step?.outcomes.find((one) => one.id === outcome)?.meaning.means === 'works';
    return afterDoing(model, tracing, id, outcome, {
      loaners: ours.map(({ id: loaner, kind, standing }) => ({ id: loaner, kind, standing })),
      stays: works && (step?.takesOut.length ?? 0) > 0,
    });
  }, started);
}

const offered = (tracing: TracingCase) => {
  const { next, others } = offerStep(model, tracing, { method: 'ratio' });
  return [next, ...others].flatMap((view) => view?.step ?? []);
};
const verdict = (tracing: TracingCase) => verdictAfter(model, tracing);
const chanceOfPart = (tracing: TracingCase, part: string) =>
  shareOf(model, posteriorOf(model, tracing), (fault) => fault.part === part);

describe('what may be called faulty', () => {
  const dark = ['no-lock-light', 'no-post', 'meas-rails:within', 'read-code:memory'] as const;

  it('our DIMM in and it works: the DIMM is named, not confirmed', () => {
    const tracing = bench(...dark, 'dimm-loan:works');
    expect(verdict(tracing).verdict).not.toBe('confirmed');
  });

  it('theirs back in and it works again: it was the handling, no DIMM is faulty', () => {
    const tracing = bench(...dark, 'dimm-loan:works', 'put-back:works');
    expect(['cured', 'tracing']).toContain(verdict(tracing).verdict);
    expect(verdict(tracing)).not.toHaveProperty('part');
  });

  it('theirs back in, fails again, and fails in the rig too: confirmed, and that likely at least', () => {
    const tracing = bench(...dark, 'dimm-loan:works', 'put-back:fails-again', 'rig-dimms:fails-there');
    expect(verdict(tracing)).toMatchObject({ verdict: 'confirmed', part: 'dimm' });
    expect(chanceOfPart(tracing, 'dimm')).toBeGreaterThanOrEqual(CONFIRMED_FROM);
  });

  it('theirs fails again at the machine but works in the rig: not the DIMM', () => {
    const tracing = bench(...dark, 'dimm-loan:works', 'put-back:fails-again', 'rig-dimms:works-there');
    expect(verdict(tracing)).not.toMatchObject({ verdict: 'confirmed' });
    expect(chanceOfPart(tracing, 'dimm')).toBeLessThan(CONFIRMED_FROM);
  });

  it('dead or hanging is not told apart, but both are the drive: the drive is confirmed', () => {
    const tracing = bench(
      'stuck-loading',
      'stops-starting',
      'meas-rails:within',
      'drive-health:not-seen',
      'drive-loan:works',
      'drive-dock:not-seen',
    );
    expect(verdict(tracing)).toMatchObject({ verdict: 'confirmed', part: 'drive', fault: 'drive-dead' });
  });

  it('a board that fails in the rig is not told from an aerial that was never there: no aerial is blamed', () => {
    const tracing = bench(
      'net-dead',
      'ports',
      'port-round:all-good',
      'meas-coils:fine',
      'cpu-look:fine',
      'rig-board:fails-there',
    );
    expect(verdict(tracing)).toMatchObject({ part: 'board' });
  });

  it('started at its pins, and not with the switch back on: named, and the switch line is measured', () => {
    const tracing = bench('no-reaction', 'no-reaction', 'look-mains:fine', 'pins-start:works', 'put-back:fails-again');
    expect(verdict(tracing)).toMatchObject({ verdict: 'named', part: 'front-panel' });
    expect(offered(tracing)).toContain('meas-standby');
    const measured = bench(
      'no-reaction',
      'no-reaction',
      'look-mains:fine',
      'pins-start:works',
      'put-back:fails-again',
      'meas-standby:switch-dead',
    );
    expect(verdict(measured)).toMatchObject({ verdict: 'confirmed', part: 'front-panel', fault: 'fp-switch' });
  });

  it('another lead and port together work: lead or port is asked before either is called faulty', () => {
    const both = ['drive-slow', 'drives', 'lead-other:works', 'put-back:fails-again'] as const;
    expect(verdict(bench(...both)).verdict).toBe('named');
    expect(offered(bench(...both))).toContain('port-other');
    expect(verdict(bench(...both, 'port-other:works', 'put-back:fails-again'))).toMatchObject({ part: 'board' });
    expect(verdict(bench(...both, 'port-other:same'))).toMatchObject({ part: 'lead' });
  });

  it('our picture cable works: theirs goes back, and cable and output are not told apart by that', () => {
    const ours = bench('dark-but-alive', 'no-picture', 'look-picture:works-cable');
    expect(offered(ours)).toContain('put-back');
    expect(verdict(ours).verdict).toBe('named');
    // Ours went to another of the card's outputs perhaps: theirs failing again does not tell cable from output.
    const again = bench('dark-but-alive', 'no-picture', 'look-picture:works-cable', 'put-back:fails-again');
    expect(verdict(again)).toMatchObject({ verdict: 'named', part: 'outside' });
  });

  it('what a scan finds need not be what stops the start: no software is called a faulty part', () => {
    const tracing = bench('slow', 'software', 'scan-offline:found');
    expect(verdict(tracing).verdict).not.toBe('confirmed');
  });
});

describe('once a part is named', () => {
  it('nothing is offered that could neither confirm nor clear it', () => {
    const tracing = bench(
      'stripes',
      'picture-wrong',
      'start-bare:same',
      'card-none:works',
      'meas-rails:within',
      'card-loan:works',
    );
    expect(verdict(tracing).verdict).toBe('named');
    expect(offered(tracing)).toContain('put-back');
    for (const silly of ['strip-outside', 'lights-off', 'front-off', 'own-things', 'drives-off'])
      expect(offered(tracing)).not.toContain(silly);
  });

  it('the suspect is put back only while it runs without it', () => {
    const tracing = bench('no-reaction', 'no-reaction', 'look-mains:fine', 'pins-start:works', 'put-back:fails-again');
    expect(offered(tracing)).not.toContain('put-back');
  });
});

describe('after a sweep cured it', () => {
  const swept = ['no-lock-light', 'no-post', 'meas-rails:within', 'sweep:works'] as const;

  it('it may be closed as it stands, which handling did it not told apart; finding out is offered', () => {
    expect(verdict(bench(...swept))).toMatchObject({
      verdict: 'cured',
      by: 'sweep',
      fault: null,
      findOut: 'sweep-which',
    });
    expect(offerStep(model, bench(...swept), { method: 'ratio' })).toMatchObject({
      next: null,
      stop: { stop: 'settled', verdict: { by: 'sweep' } },
    });
  });

  it('found out: it fails with the old settings, or it was a contact', () => {
    expect(verdict(bench(...swept, 'sweep-which:was-setting'))).toMatchObject({ verdict: 'cured', by: 'setting' });
    const contact = verdict(bench(...swept, 'sweep-which:was-contact'));
    // Most of it is in the memory's seat, not enough of it to be said.
    expect(contact).toMatchObject({ verdict: 'cured', by: 'reseating', fault: null });
    expect(contact).not.toHaveProperty('findOut');
  });

  it('how likely it was a setting or a contact follows what is believed', () => {
    const both = reasonFor(model, bench(...swept), 'sweep-which')?.outcomes ?? [];
    expect(both.reduce((sum, { p }) => sum + p, 0)).toBeCloseTo(1, 9);
    const toSettings = reasonFor(
      model,
      bench('no-lock-light', 'no-post', 'dimm-press:same', 'sweep:works'),
      'sweep-which',
    );
    const setting = (one: typeof both) => one.find(({ outcome }) => outcome === 'was-setting')?.p ?? 0;
    // The DIMMs were pressed in before, and it stayed dark: a setting has become likelier.
    expect(setting(toSettings?.outcomes ?? [])).toBeGreaterThan(setting(both));
  });

  it('nothing is asked where the belief leaves no doubt which it was', () => {
    const contacts = bench(
      'no-lock-light',
      'no-post',
      'read-code:memory',
      'cmos-clear:same',
      'profile-off:same',
      'sweep:works',
    );
    expect(verdict(contacts)).toMatchObject({ verdict: 'cured', by: 'reseating' });
    expect(verdict(contacts)).not.toHaveProperty('findOut');
  });

  it('is asked only after a sweep that cured', () => {
    const { notOffered } = offerStep(model, bench('no-lock-light', 'no-post', 'sweep:same'), { method: 'ratio' });
    expect(notOffered).toContainEqual({ step: 'sweep-which', why: { is: 'machine', need: 'swept' } });
  });
});
