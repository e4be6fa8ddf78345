import { describe, expect, it } from 'vitest';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import type { MachineFacts } from '../case.ts';
import { closedGates } from '../gates/gates.ts';
import { standardModel } from '../loading/standardModel.ts';
import type { LoanerProof, Switch, TracingCase } from '../types.ts';

/* Ways on which a part of ours was hurt although rules were kept: common practice, no source. */
const model = standardModel();

type Stands = {
  readonly told: readonly string[];
  readonly changed?: readonly string[];
  readonly log?: readonly string[];
  readonly switches?: readonly Switch[];
  readonly machine?: Partial<MachineFacts>;
  readonly p?: Readonly<Record<string, number>>;
};

function holding(step: string, stands: Stands, standing: LoanerProof | null = null): readonly string[] {
  const { told, changed = [], log = [], switches = [], machine = {}, p = {} } = stands;
  const plain = aTracingCase({
    told: { symptoms: [...told], changed: [...changed], often: ['every-time'], onlyWhen: [], rate: null },
  });
  const tracing = log.reduce<TracingCase>(
    (now, line) => {
      const [id = '', outcome = ''] = line.split(':');
      return afterDoing(model, now, id, outcome);
    },
    { ...plain, switches, machine: { ...plain.machine, ...machine } },
  );
  const known = model.steps.find((one) => one.id === step);
  if (!known) throw new Error(`no step ${step}`);
  const suspects = Object.entries(p).map(([fault, chance]) => ({ fault, p: chance, mended: 0, comesAndGoes: 0 }));
  return closedGates(model, tracing, known, suspects, standing).map(({ gate }) => gate.id);
}

describe('no way round the rules for what is ours', () => {
  it('our drive on the owner’s wrong lead: rails within at the main plug say nothing of the drive’s lead', () => {
    const stands = {
      told: ['stuck-loading'],
      log: ['look-inside:clean', 'meas-rails:within', 'strip-outside:same'],
      machine: { modularSupply: true },
    };
    expect(holding('drive-loan', stands)).toContain('leads-before-drive');
    expect(holding('drive-loan', { ...stands, log: [...stands.log, 'census:plain'] })).not.toContain(
      'leads-before-drive',
    );
  });
  it('ours on a supply that nobody measured, because ours beside it changed nothing', () => {
    const log = ['look-inside:clean', 'strip-outside:same', 'meas-coils:fine', 'supply-beside:same'];
    for (const step of ['cpu-loan', 'board-loan', 'drive-loan'])
      expect(holding(step, { told: ['dark-runs'], log })).toContain('rails-before-dear');
  });
  it('a rail that is too high now and then passes one measuring: twice, or under load, before processor and board', () => {
    const once = ['look-inside:clean', 'meas-coils:fine', 'cpu-look:fine', 'drives-off:same', 'meas-rails:within'];
    for (const step of ['cpu-loan', 'board-loan', 'cpu-order', 'board-order']) {
      const held = (...more: readonly string[]) =>
        holding(step, { told: ['dark-runs'], log: [...once, ...more] }).includes('rails-twice-before-dear');
      expect(held(), step).toBe(true);
      expect(held('rails-again:outside'), step).toBe(true);
      for (const again of ['rails-again:within', 'supply-alone:holds', 'rails-log:steady', 'rig-supply:works-there'])
        expect(held(again), `${step} ${again}`).toBe(false);
    }
    expect(holding('dimm-loan', { told: ['dark-runs'], log: once })).not.toContain('rails-twice-before-dear');
    expect(holding('watch-start', { told: ['dark-runs'], log: [...once, 'rails-again:outside'] })).toContain(
      'supply-outside',
    );
  });
  it('our supply at a maker’s own plug', () => {
    const stands: Stands = { told: ['light-no-start'], log: ['look-inside:clean'], switches: ['own-make-supply'] };
    for (const step of ['supply-beside', 'supply-alone', 'rig-supply'])
      expect(holding(step, stands)).toContain('own-plug-no-loaner');
  });
  it('a likely shorted card, or memory after a storm, into our rig', () => {
    expect(holding('rig-card', { told: ['twitch-off'], p: { 'gpu-short': 0.97 } })).toContain(
      'shorted-card-not-on-rig',
    );
    for (const step of ['rig-dimms', 'rig-cpu'])
      expect(holding(step, { told: ['dark-runs'], changed: ['storm'] })).toContain('storm-until-ohms');
  });
  it('a start, or the suspect back in, with a short believed: ohms prove it', () => {
    const short = { told: ['twitch-off'], log: ['look-inside:clean', 'card-none:works'], p: { 'gpu-short': 0.97 } };
    expect(holding('put-back', short)).toContain('no-proof-under-power');
    expect(holding('watch-start', short)).toContain('likely-short-until-ohms');
  });
  it('another processor, in theirs or theirs on our rig: the disk’s key is warned of', () => {
    for (const id of ['cpu-loan', 'rig-cpu'])
      expect(model.steps.find((step) => step.id === id)?.cautions).toContain('disk-key');
  });
  it('a part of the cheap sort before the look, where it is wet, or smoke or a bang was told', () => {
    for (const told of ['smoke-bang', 'leak', 'smell'])
      expect(holding('dimm-loan', { told: [told] }, 'trial-grade')).toContain('stop-until-look');
    expect(holding('dimm-loan', { told: ['dark-runs'], log: ['look-inside:wet'] }, 'trial-grade')).toContain(
      'wet-dried',
    );
  });
});
