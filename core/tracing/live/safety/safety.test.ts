import { describe, expect, it } from 'vitest';
import { changed } from '../../../../tests/builders/brokenModel.ts';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import type { MachineFacts } from '../case.ts';
import { closedGates, openedByNoWord, owedBeforeSettling } from '../gates/gates.ts';
import { standardModel } from '../loading/standardModel.ts';
import type { Switch, TracingCase } from '../types.ts';

/* What must be held, and what opens it: common practice, no source. */
const model = standardModel();

type Said = {
  readonly told: readonly string[];
  readonly log?: readonly string[];
  readonly switches?: readonly Switch[];
  readonly machine?: Partial<MachineFacts>;
  /** Believed faults with their chance. */
  readonly p?: Readonly<Record<string, number>>;
};

function bench({ told, log = [], switches = [], machine = {} }: Said): TracingCase {
  const plain = aTracingCase({
    told: { symptoms: [...told], changed: [], often: ['every-time'], onlyWhen: [], rate: null },
  });
  const start = { ...plain, switches, machine: { ...plain.machine, ...machine } };
  return log.reduce<TracingCase>((tracing, line) => {
    const [id = '', outcome = ''] = line.split(':');
    return afterDoing(model, tracing, id, outcome);
  }, start);
}

const suspects = (p: Said['p'] = {}) =>
  Object.entries(p).map(([fault, chance]) => ({ fault, p: chance, mended: 0, comesAndGoes: 0 }));
function holding(step: string, said: Said) {
  const known = model.steps.find((one) => one.id === step);
  if (!known) throw new Error(`no step ${step}`);
  return closedGates(model, bench(said), known, suspects(said.p), null).filter(({ gate }) => gate.safety !== null);
}
const owed = (said: Said) =>
  owedBeforeSettling(model, bench(said), suspects(said.p)).flatMap(({ ways }) => ways.flat());
const rules = (step: string, said: Said) => holding(step, said).map(({ gate }) => gate.id);

describe('before the look, a machine that smelled, banged, leaked or tripped the breaker', () => {
  it.each(['smell', 'smoke-bang', 'leak', 'trips-breaker'])('"%s" gets no mains, no loaner, no rig', (term) => {
    for (const step of ['meas-standby', 'watch-start', 'wall-watts', 'dimm-loan', 'supply-beside', 'rig-card'])
      expect(rules(step, { told: [term] })).toContain('stop-until-look');
    expect(rules('look-inside', { told: [term] })).toEqual([]);
    expect(rules('meas-standby', { told: [term], log: ['look-inside:clean'] })).not.toContain('stop-until-look');
  });
  it('any other machine is not held by it', () => {
    expect(rules('watch-start', { told: ['dark-runs'] })).toEqual([]);
  });
});

describe('the breaker', () => {
  const told = ['trips-breaker'];
  it('its supply goes on the mains only with earth and insulation measured good', () => {
    expect(rules('wall-watts', { told, log: ['look-inside:clean'] })).toContain('breaker-until-earth');
    expect(rules('wall-watts', { told, log: ['look-inside:clean', 'earth-insulation:good'] })).toEqual([]);
    expect(rules('wall-watts', { told, log: ['look-inside:clean', 'earth-insulation:bad'] })).toContain(
      'breaker-until-earth',
    );
  });
  it('our own supply beside the case is not held by theirs', () => {
    expect(rules('supply-beside', { told, log: ['look-inside:clean', 'meas-coils:fine'] })).toEqual([]);
  });
});

describe('wet and burnt', () => {
  it('wet: not even standby before it is dry', () => {
    const wet = { told: ['no-reaction'], log: ['look-inside:wet'] };
    for (const step of ['meas-standby', 'watch-start', 'cool-loan']) expect(rules(step, wet)).toContain('wet-dried');
    expect(rules('meas-standby', { ...wet, log: [...wet.log, 'wet-clean:same'] })).toEqual([]);
  });
  it('with a liquid cooler inside, its source is found before a start, and before a verdict', () => {
    const leak: Said = { told: ['leak'], switches: ['closed-liquid'], log: ['look-inside:wet', 'wet-clean:works'] };
    expect(rules('watch-start', leak)).toContain('leak-until-source');
    expect(owed(leak)).toContain('leak-source');
    const found = { ...leak, log: [...(leak.log ?? []), 'leak-source:spill'] };
    expect(rules('watch-start', found)).toEqual([]);
    expect(owed(found)).toEqual([]);
    expect(rules('watch-start', { ...leak, log: [...(leak.log ?? []), 'leak-source:cooler'] })).toContain(
      'leaking-cooler-out',
    );
  });
  it('burnt: where, then ohms; a burnt plug bears no load', () => {
    const burnt = (...log: readonly string[]) => ({ told: ['smell'], log: ['look-inside:burnt', ...log] });
    expect(rules('watch-start', burnt())).toEqual(expect.arrayContaining(['burnt-until-where', 'burnt-measured']));
    expect(rules('watch-start', burnt('burnt-where:board', 'meas-coils:fine'))).toEqual([]);
    expect(rules('load-card', burnt('burnt-where:plug', 'meas-coils:fine'))).toContain('burnt-plug-no-load');
  });
});

describe('shorts and supplies', () => {
  it('what is likely shorted is not put back under power, and not onto our rig', () => {
    const short = { told: ['twitch-off'], p: { 'gpu-short': 0.5 } };
    expect(rules('put-back', short)).toContain('no-proof-under-power');
    expect(rules('rig-card', short)).toContain('shorted-card-not-on-rig');
    expect(rules('put-back', { ...short, p: { 'gpu-short': 0.1 } })).toEqual([]);
  });
  it('a drive that stalls the start is copied before it is read through, whichever step showed it', () => {
    for (const shown of ['drives-off:works', 'drive-each:another', 'drive-each:systems'])
      expect(rules('drive-read', { told: ['stuck-logo'], log: ['look-inside:clean', shown] }), shown).toContain(
        'hanging-copied-first',
      );
    expect(rules('drive-read', { told: ['stuck-logo'], log: ['drive-each:each-starts'] })).not.toContain(
      'hanging-copied-first',
    );
  });
  it('a short that measured is not proved by the suspect under power, though a later measuring is fine', () => {
    const log = [
      'look-inside:burnt',
      'burnt-where:board',
      'lead-other:works',
      'short-cleared:still',
      'meas-coils:fine',
    ];
    expect(rules('put-back', { told: ['no-reaction'], log })).toContain('short-not-put-back');
    expect(rules('put-back', { told: ['no-reaction'], log: [...log, 'short-cleared:cleared'] })).not.toContain(
      'short-not-put-back',
    );
  });
  it('a maker’s own plug takes neither our supply nor our tester', () => {
    const own: Said = { told: ['no-reaction'], switches: ['own-make-supply'] };
    for (const step of ['supply-beside', 'supply-alone']) expect(rules(step, own)).toEqual(['own-plug-no-loaner']);
  });
});

describe('data', () => {
  it('a drive that clicks or was found failing is copied before anything starts it, or ends the tracing', () => {
    for (const said of [
      { told: ['drive-clicks'] },
      { told: ['slow'], log: ['look-inside:clean', 'drive-dock:errors'] },
    ] satisfies readonly Said[]) {
      const found = holding('watch-start', said);
      expect(found.length).toBeGreaterThan(0);
      expect(found.every(({ gate }) => openedByNoWord(gate))).toBe(true);
      expect(owed(said)).toContain('drive-image');
      const copied: Said = { ...said, log: [...('log' in said ? said.log : []), 'drive-image:partly'] };
      expect(rules('watch-start', copied)).toEqual([]);
      expect(owed(copied)).toEqual([]);
    }
    expect(rules('drive-image', { told: ['drive-clicks'] })).toEqual([]);
  });
  it('nothing is written to or cleared under a locked disk without its key', () => {
    const locked: Said = { told: ['asks-key'], machine: { encrypted: 'yes', keyInHand: false } };
    for (const step of ['mend-start', 'undo-update', 'cmos-clear', 'fw-update'])
      expect(rules(step, locked)).toContain('key-before-writing');
    expect(rules('cmos-clear', { ...locked, told: ['freezes'], machine: { encrypted: 'no' } })).toEqual([]);
  });
  it('after a ransom note its system is not started, nothing is written, copied or not, and no verdict ends it', () => {
    expect(rules('live-start', { told: ['ransom'] })).toEqual([]);
    for (const log of [[], ['drive-image:copied']]) {
      expect(rules('log-read', { told: ['ransom'], log })).toContain('extortion-not-started');
      expect(rules('scan-offline', { told: ['ransom'], log })).toContain('extortion-nothing-written');
    }
    expect(owed({ told: ['ransom'] })).toContain('drive-image');
    const copied = { told: ['ransom'], log: ['drive-image:copied'] };
    expect(owedBeforeSettling(model, bench(copied), []).map(({ gate }) => gate.id)).toEqual([
      'extortion-owner-decides',
    ]);
  });
  it('a copy that failed opens nothing', () => {
    const failed = { told: ['drive-clicks'], log: ['drive-image:failed'] };
    expect(rules('watch-start', failed)).toContain('clicking-copied-first');
    expect(owed(failed)).toContain('drive-lab');
  });
});

it('firmware waits until memory and supply are proved', () => {
  const doubtful = { told: ['freezes'], p: { 'dimm-bits': 0.3 } };
  expect(rules('fw-update', doubtful)).toContain('firmware-on-sound-memory');
  expect(rules('fw-update', { ...doubtful, log: ['mem-pass:clean', 'meas-rails:within'] })).toEqual([]);
});

it('with a cell that may be flat the settings are noted before the mains come off', () => {
  const old = { told: ['settings-lost'], p: { 'board-cell': 0.5 } };
  expect(rules('drain-start', old)).toContain('notes-before-mains');
  expect(rules('drain-start', { ...old, log: ['setup-notes:differs'] })).toEqual([]);
});

describe('a rule that does not hold together is refused', () => {
  it.each([
    [{ deeds: ['flies'] }, 'no step does flies'],
    [{ told: ['nobody-says'] }, 'nobody tells nobody-says'],
    [{ spares: ['no-such'] }, 'no step no-such'],
    [{ until: [[{ step: 'look-inside', outcomes: ['sunny'] }]] }, 'look-inside has no outcome sunny'],
  ])('%j', (change, because) => {
    expect(changed((files) => Object.assign(files['safety.json'].rules[0], change))).toMatchObject({ because });
  });
});
