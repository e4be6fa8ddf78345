import { describe, expect, it } from 'vitest';
import toCome from '../../assets/cases/steps-to-come.json' with { type: 'json' };
import steps from '../../assets/fault-model/steps.json' with { type: 'json' };
import { caseEntry, caseStep } from './caseNames.ts';
import { breaches, judge, leftOpen, SENTENCES } from './judge.ts';
import { wrongWithProposing } from './proposal.ts';
import { standing } from './standing.ts';
import { doingsOf } from './stepTable.ts';
import { canBeRiskless, cautionsDue } from './wordsDue.ts';

type Machine = Parameters<typeof standing>[0];
/** What was told and done, the step in question, and the sentence it breaks; `-` where it breaks none. */
type Row = readonly [told: Machine, step: string, rule: string];

const rulesOf = (machine: Machine, step: string) => breaches(standing(machine), step).map(({ rule }) => rule);

function holds(rows: readonly Row[]): void {
  for (const [machine, step, rule] of rows) {
    const broken = rulesOf(machine, step);
    const said = `${JSON.stringify(machine)} ${step}`;
    if (rule === '-') expect(broken, said).toEqual([]);
    else expect(broken, said).toContain(rule);
  }
}

describe('power', () => {
  it('waits for the look where smoke, a smell, liquid or a bang was told; standby is power', () => {
    const bang = { told: ['smoke-bang'], changed: ['bang-smell'] };
    holds([
      [bang, 'meas-standby', 'look-before-mains'],
      [bang, 'watch-start', 'look-before-mains'],
      [bang, 'cmos-clear', 'look-before-mains'],
      [bang, 'supply-alone', 'look-before-mains'],
      [bang, 'look-inside', '-'],
      [bang, 'meas-coils', '-'],
      [{ ...bang, log: ['look-inside:clean'] }, 'meas-standby', '-'],
      [{ told: ['no-reaction'] }, 'meas-standby', '-'],
      [{ told: ['smell'], log: ['look-inside:could-not'] }, 'watch-start', 'look-before-mains'],
    ]);
  });

  it('stays off what is wet or burnt until that is dealt with', () => {
    holds([
      [{ log: ['look-inside:wet'] }, 'meas-standby', 'wet-dried'],
      [{ log: ['look-inside:wet'] }, 'cool-loan', 'wet-dried'],
      [{ log: ['look-inside:wet'] }, 'wet-clean', '-'],
      [{ log: ['look-inside:wet', 'wet-clean:same'] }, 'meas-standby', '-'],
      [{ log: ['look-inside:wet', 'wet-clean:same', 'under-look:corroded'] }, 'watch-start', 'wet-dried'],
      [{ log: ['look-inside:burnt'] }, 'meas-standby', 'burnt-measured'],
      [{ log: ['look-inside:burnt', 'meas-coils:fine'] }, 'meas-standby', '-'],
      [{ log: ['look-inside:burnt', 'meas-coils:fine'] }, 'watch-start', 'burnt-where'],
      [{ log: ['look-inside:burnt', 'meas-coils:fine'] }, 'aux-other', '-'],
      [{ log: ['look-inside:burnt', 'meas-coils:fine', 'burnt-where:plug'] }, 'watch-start', '-'],
      [{ log: ['look-inside:burnt', 'meas-coils:fine', 'burnt-where:plug'] }, 'load-card', 'burnt-plug-loaded'],
      [{ log: ['look-inside:burnt', 'meas-coils:fine', 'aux-other:works'] }, 'load-card', '-'],
      [{ log: ['look-inside:burnt', 'meas-coils:fine', 'burnt-where:board'] }, 'load-card', '-'],
    ]);
  });

  it('stays off a liquid cooler that was wet until the source is found, and does not end there', () => {
    const leak = { told: ['leak'], machine: { liquidCooler: 'closed' as const } };
    const dried = { ...leak, log: ['look-inside:wet', 'wet-clean:works'] };
    holds([
      [dried, 'once-more', 'leak-found'],
      [dried, 'settled', 'leak-found'],
      [dried, 'cool-loan', '-'],
      [{ ...leak, log: ['look-inside:wet', 'leak-source:spill', 'wet-clean:works'] }, 'settled', '-'],
      [{ ...dried, machine: {} }, 'once-more', '-'],
    ]);
  });

  it('goes to no supply that threw the breaker before earth and insulation are good', () => {
    const breaker = { told: ['trips-breaker'], log: ['look-inside:clean', 'meas-coils:fine'] };
    holds([
      [breaker, 'wall-watts', 'breaker-measured'],
      [breaker, 'supply-alone', 'breaker-measured'],
      [breaker, 'supply-beside', '-'],
      [{ ...breaker, log: [...breaker.log, 'earth-insulation:good'] }, 'wall-watts', '-'],
      [{ ...breaker, log: [...breaker.log, 'earth-insulation:bad'] }, 'watch-start', 'breaker-measured'],
    ]);
  });

  it('waits where it fell, where the cooler hangs, and loads nothing whose fan stands', () => {
    holds([
      [{ changed: ['dropped'] }, 'watch-start', 'look-after-a-fall'],
      [{ changed: ['dropped'], log: ['look-inside:clean'] }, 'watch-start', '-'],
      [{ changed: ['moved'] }, 'watch-start', '-'],
      [{ log: ['look-inside:cooler-loose'] }, 'watch-start', 'cooler-loose'],
      [{ log: ['look-inside:cooler-loose'] }, 'cool-again', '-'],
      [{ log: ['look-inside:cooler-loose', 'cool-again:works'] }, 'once-more', '-'],
      [{ log: ['fan-look:pump-still'] }, 'load-cpu', 'fan-stands'],
      [{ log: ['fan-look:pump-still'] }, 'temp-watch', '-'],
      [{ log: ['fan-look:fan-still', 'fan-lead:works'] }, 'load-cpu', '-'],
    ]);
  });

  it('goes to no swollen battery, no rail outside, no mixed leads', () => {
    holds([
      [{ log: ['look-inside:battery-swollen'] }, 'meas-standby', 'battery-swollen'],
      [{ log: ['look-inside:battery-swollen'] }, 'board-send', 'battery-swollen'],
      [{ log: ['meas-rails:outside'] }, 'mem-pass', 'supply-outside'],
      [{ log: ['look-inside:clean', 'meas-rails:outside'] }, 'supply-beside', '-'],
      [{ log: ['meas-rails:outside', 'supply-cleared:within'] }, 'mem-pass', '-'],
      [{ log: ['census:lead-mixed'] }, 'once-more', 'leads-mixed'],
      [{ log: ['census:lead-mixed'] }, 'lead-other', '-'],
      [{ log: ['census:plain'] }, 'once-more', '-'],
    ]);
  });

  it('comes after the owner’s word where an open loop must be drained', () => {
    const loop = { machine: { liquidCooler: 'open-loop' as const }, log: ['look-inside:clean'] };
    holds([
      [loop, 'cool-again', 'open-loop-drained'],
      [loop, 'card-seat', 'open-loop-drained'],
      [loop, 'fan-look', '-'],
      [{ ...loop, log: ['look-inside:clean', 'ask-owner:yes'] }, 'cool-again', '-'],
      [{ machine: { liquidCooler: 'closed' }, log: ['look-inside:clean'] }, 'cool-again', '-'],
    ]);
  });
});

describe('shorts, and proof by switching on', () => {
  it('starts nothing and lends nothing while a measured short stands', () => {
    const short = { told: ['twitch-off'], log: ['look-inside:clean', 'meas-coils:short'] };
    holds([
      [short, 'once-more', 'short-found'],
      [short, 'card-none', 'short-found'],
      [short, 'supply-beside', 'short-keeps-ours-out'],
      [short, 'rig-board', 'short-keeps-ours-out'],
      [short, 'short-which', '-'],
      [{ ...short, log: [...short.log, 'short-which:still'] }, 'watch-start', 'short-found'],
      [{ ...short, log: [...short.log, 'short-which:gone'] }, 'card-none', '-'],
      [{ ...short, log: [...short.log, 'short-which:still', 'short-cleared:cleared'] }, 'once-more', '-'],
    ]);
  });

  it('gives a shorted card no power again, in no slot, on no rig', () => {
    const gone = ['look-inside:clean', 'meas-coils:short', 'short-which:gone'];
    holds([
      [{ log: gone }, 'put-back', 'shorted-card'],
      [{ log: gone }, 'card-slot2', 'shorted-card'],
      [{ log: gone }, 'rig-card', 'shorted-card-on-rig'],
      [{ log: gone }, 'card-loan', '-'],
      [{ told: ['twitch-off'], log: ['look-inside:clean', 'card-none:works'] }, 'put-back', 'shorted-card'],
      [{ told: ['no-signal'], log: ['look-inside:clean', 'card-none:works'] }, 'put-back', '-'],
      [{ log: ['look-inside:clean'], believed: { 'gpu-short': 0.97 } }, 'rig-card', 'shorted-card-on-rig'],
      [{ log: ['look-inside:clean'], believed: { 'gpu-short': 0.1 } }, 'rig-card', '-'],
    ]);
  });

  it('gives a shorted drive no power again', () => {
    const off = { told: ['twitch-off', 'data-wanted'], log: ['look-inside:clean', 'drives-off:works'] };
    holds([
      [off, 'put-back', 'shorted-drive'],
      [off, 'drive-image', 'shorted-drive'],
      [off, 'drive-lab', '-'],
      [{ ...off, told: ['stuck-logo'] }, 'put-back', '-'],
    ]);
  });

  it('proves no supply that banged by switching it on, and lets a tired one prove itself', () => {
    const works = ['look-inside:clean', 'meas-coils:fine', 'supply-beside:works'];
    holds([
      [{ told: ['smoke-bang'], log: works }, 'put-back', 'supply-put-back'],
      [{ told: ['no-reaction'], log: ['supply-alone:outside', ...works] }, 'put-back', 'supply-put-back'],
      [{ told: ['shuts-off-load'], log: works }, 'put-back', '-'],
      [{ told: ['smell'], log: works }, 'put-back', 'supply-put-back'],
      [{ told: ['smell'], log: [...works, 'dimm-loan:works'] }, 'put-back', '-'],
      [{ log: ['meas-coils:short', 'short-which:still', 'board-loan:works'] }, 'put-back', 'board-put-back'],
    ]);
  });
});

describe('the owner’s drive', () => {
  it('spins for its copy and for nothing else when it clicks', () => {
    const clicks = { told: ['drive-clicks'], log: ['look-inside:clean'] };
    holds([
      [clicks, 'watch-start', 'clicking-drive-spins'],
      [clicks, 'meas-rails', 'clicking-drive-spins'],
      [clicks, 'live-start', 'clicking-drive-spins'],
      [clicks, 'drive-image', '-'],
      [clicks, 'drives-off', '-'],
      [{ ...clicks, log: ['drive-image:partly'] }, 'drive-health', '-'],
      [{ ...clicks, agreed: ['open', 'own-parts-in', 'start-own', 'read'] }, 'drive-health', '-'],
      [{ ...clicks, told: ['drive-clicks', 'data-wanted'], agreed: ['open'] }, 'watch-start', 'clicking-drive-spins'],
    ]);
  });

  it('is copied before it works, is written to, or the tracing ends, when it fails', () => {
    const warned = { log: ['look-inside:clean', 'drive-health:warning'] };
    holds([
      [warned, 'drive-read', 'failing-drive-worked'],
      [warned, 'start-bare', 'failing-drive-worked'],
      [warned, 'drive-health', 'failing-drive-asked-again'],
      [warned, 'mend-start', 'failing-drive-written'],
      [warned, 'settled', 'settled-uncopied'],
      [warned, 'drive-image', '-'],
      [{ log: [...warned.log, 'drive-image:copied'] }, 'settled', '-'],
      [{ log: [...warned.log, 'drive-image:copied'] }, 'drive-read', '-'],
      [{ told: ['drive-warning'] }, 'drive-health', '-'],
      [{ log: ['drive-health:clean'] }, 'start-bare', '-'],
    ]);
  });

  it('is copied before it is started again once it was seen to fail, and before it is written to where it is wanted', () => {
    holds([
      [{ log: ['drive-dock:errors'] }, 'once-more', 'failing-drive-started'],
      [{ log: ['drive-dock:errors', 'drives-off:works'] }, 'mem-pass', 'failing-drive-worked'],
      [{ log: ['drive-dock:errors', 'drive-clone:works'] }, 'once-more', '-'],
      [{ told: ['stuck-logo'], log: ['look-inside:clean', 'drives-off:works'] }, 'drive-read', 'failing-drive-worked'],
      [
        { told: ['stuck-logo'], log: ['look-inside:clean', 'drive-each:another'] },
        'drive-read',
        'failing-drive-worked',
      ],
      [{ told: ['stuck-logo'], log: ['look-inside:clean', 'drives-off:same'] }, 'drive-read', '-'],
      [{ told: ['data-wanted'] }, 'undo-update', 'wanted-before-written'],
      [{ told: ['data-wanted'], log: ['drive-image:copied'] }, 'undo-update', '-'],
      [{ told: ['files-broken'] }, 'undo-update', 'torn-files-unread'],
      [{ told: ['files-broken'], log: ['drive-dock:reads'] }, 'undo-update', '-'],
    ]);
  });

  it('does not spin on leads that nobody looked at since a new supply', () => {
    const machine = { modularSupply: true, newPart: 'supply' };
    holds([
      [{ told: ['twitch-off'], machine }, 'strip-outside', 'new-supply-old-leads'],
      [{ told: ['twitch-off'], machine }, 'drives-off', '-'],
      [{ told: ['twitch-off'], machine, log: ['census:plain'] }, 'strip-outside', '-'],
      [{ told: ['twitch-off'], machine: { ...machine, newPart: 'card' } }, 'strip-outside', '-'],
      [
        { told: ['twitch-off'], machine: { modularSupply: true }, log: ['ask-part:supply'] },
        'wall-watts',
        'new-supply-old-leads',
      ],
    ]);
  });

  it('is not started and not written to where somebody wants money for it', () => {
    const locked = { told: ['ransom'], log: ['look-inside:clean'] };
    holds([
      [locked, 'watch-start', 'extortion-system-started'],
      [locked, 'log-read', 'extortion-system-started'],
      [locked, 'system-anew', 'extortion-written'],
      [locked, 'drive-image', '-'],
      [locked, 'drive-dock', '-'],
      [{ ...locked, log: [...locked.log, 'drive-image:copied'] }, 'start-bare', 'extortion-system-started'],
      [{ ...locked, log: [...locked.log, 'drive-image:copied'] }, 'system-anew', '-'],
      [{ told: ['adverts'] }, 'start-bare', '-'],
    ]);
  });

  it('is not written to through memory that makes errors, nor over what nobody has read or copied', () => {
    holds([
      [{ log: ['mem-pass:errors'] }, 'undo-update', 'written-through-bad-memory'],
      [{ log: ['mem-pass:errors', 'profile-off:works'] }, 'undo-update', 'written-through-bad-memory'],
      [{ log: ['mem-pass:errors', 'profile-off:works', 'mem-pass:clean'] }, 'undo-update', '-'],
      [{}, 'mend-start', 'written-over-unread'],
      [{ log: ['drive-health:clean'] }, 'mend-start', '-'],
      [{ log: ['drive-dock:reads'] }, 'mend-start', '-'],
      [{ log: ['drive-health:clean'] }, 'system-anew', 'set-up-anew-uncopied'],
      [{ log: ['drive-image:copied'] }, 'system-anew', '-'],
    ]);
  });
});

describe('board, firmware, settings', () => {
  it('writes no firmware on what may freeze or go off', () => {
    const passed = ['mem-pass:clean', 'meas-rails:within'];
    holds([
      [{ told: ['restarts-in-use'] }, 'fw-update', 'firmware-on-unsteady'],
      [{ log: ['mem-pass:errors'] }, 'fw-update', 'firmware-on-unsteady'],
      [{ log: ['log-read:power-loss', 'mem-pass:clean'] }, 'fw-update', 'firmware-on-unsteady'],
      [{ told: ['restarts-in-use'], log: passed }, 'fw-update', '-'],
      [{ told: ['restarts-in-use'], log: [...passed, 'mem-night:errors'] }, 'fw-update', 'firmware-on-unsteady'],
      [{ believed: { 'dimm-bits': 0.06, 'psu-load': 0.05 } }, 'fw-update', 'firmware-on-unsteady'],
      [{ believed: { 'dimm-bits': 0.02, 'os-driver': 0.9 } }, 'fw-update', '-'],
      [{ told: ['dark-runs'] }, 'fw-rescue', '-'],
      [{ told: ['freezes'] }, 'fw-rescue', 'firmware-on-unsteady'],
      [{ told: ['freezes'], log: passed }, 'fw-rescue', '-'],
      [{ told: ['off-after-seconds'] }, 'fw-rescue', 'rescue-on-bad-power'],
      [{ told: ['off-after-seconds'], log: ['meas-rails:within'] }, 'fw-rescue', '-'],
    ]);
  });

  it('neither clears nor writes while a disk may be locked for good', () => {
    const unknown = { machine: { encrypted: 'unknown' as const } };
    holds([
      [unknown, 'cmos-clear', 'cleared-while-locked'],
      [unknown, 'sweep', 'cleared-while-locked'],
      [unknown, 'fw-update', 'cleared-while-locked'],
      [{ machine: { encrypted: 'yes' }, log: ['drive-health:clean'] }, 'mend-start', 'written-while-locked'],
      [{ ...unknown, log: ['ask-key:no-key'] }, 'cmos-clear', 'cleared-while-locked'],
      [{ ...unknown, log: ['ask-key:risk-signed'] }, 'cmos-clear', '-'],
      [{ machine: { encrypted: 'yes', keyInHand: true } }, 'cmos-clear', '-'],
      [{ machine: { encrypted: 'no' } }, 'cmos-clear', '-'],
      [{}, 'cmos-clear', '-'],
      [{ machine: { encrypted: 'yes' }, log: ['look-inside:clean'] }, 'board-order', 'foreign-board-while-locked'],
      [unknown, 'cell-measure', '-'],
    ]);
  });

  it('has the key first, and the settings of an array on a photograph', () => {
    const asks = { told: ['asks-key'], machine: { encrypted: 'yes' as const, keyInHand: true } };
    const array = { told: ['no-boot-device'], machine: { array: 2 }, log: ['drive-health:clean'] };
    const mode = { told: ['error-at-start'], changed: ['fw-update'], log: ['drive-health:clean'] };
    holds([
      [asks, 'cmos-clear', 'key-first'],
      [asks, 'undo-update', 'key-first'],
      [asks, 'key-enter', '-'],
      [{ ...asks, log: ['key-enter:works'] }, 'cmos-clear', '-'],
      [array, 'cmos-clear', 'array-noted-first'],
      [{ ...array, told: ['dark-runs'], log: ['ask-owner:yes'] }, 'cmos-clear', '-'],
      [array, 'mend-start', 'array-noted-first'],
      [{ ...array, log: [...array.log, 'setup-notes:differs'] }, 'mend-start', '-'],
      [{ ...array, machine: {} }, 'mend-start', '-'],
      [mode, 'mend-start', 'mode-before-repair'],
      [{ ...mode, log: [...mode.log, 'setup-notes:as-expected'] }, 'mend-start', '-'],
      [{ ...mode, changed: [] }, 'mend-start', '-'],
    ]);
  });

  it('takes no mains off a flat cell that holds an array’s or a locked disk’s settings', () => {
    const array = { told: ['settings-lost'], machine: { array: 2 }, log: ['watch-start:bd'] };
    holds([
      [array, 'press-plugs', 'mains-off-on-flat-cell'],
      [{ ...array, log: ['watch-start:bd', 'setup-notes:differs'] }, 'press-plugs', '-'],
      [{ ...array, log: ['watch-start:bd', 'cell-measure:good'] }, 'press-plugs', '-'],
      [{ ...array, machine: {} }, 'press-plugs', '-'],
      [array, 'cell-measure', '-'],
    ]);
  });
});

describe('our own parts', () => {
  const looked = ['look-inside:clean'];
  const once = [...looked, 'meas-rails:within', 'meas-coils:fine', 'cpu-look:fine'];
  const proven = [...once, 'rails-again:within'];

  it('go on no maker’s own plug and no brick', () => {
    holds([
      [{ machine: { ownMakeSupply: true }, log: looked }, 'supply-beside', 'own-plug'],
      [{ machine: { ownMakeSupply: true }, log: proven }, 'board-loan', 'own-plug'],
      [{ machine: { brick: true } }, 'supply-alone', 'own-plug'],
      [{ machine: { brick: true } }, 'brick-ours', '-'],
      [{ machine: { ownMakeSupply: true }, log: looked }, 'dimm-loan', '-'],
    ]);
  });

  it('wait for the look and the ohms', () => {
    holds([
      [{}, 'supply-beside', 'look-before-ours'],
      [{}, 'dimm-loan', '-'],
      [{ told: ['smell'] }, 'dimm-loan', 'look-before-ours'],
      [{ told: ['smell'], log: looked }, 'supply-beside', 'ohms-after-a-bang'],
      [{ told: ['smell'], log: [...looked, 'meas-coils:fine'] }, 'supply-beside', '-'],
      [{ told: ['twitch-off'], log: looked }, 'supply-beside', '-'],
      [{ changed: ['never-worked'] }, 'dimm-loan', 'look-before-ours'],
      [{ changed: ['never-worked'], log: looked }, 'dimm-loan', '-'],
      [{ log: [...looked, 'feel-heat:hot-board'] }, 'dimm-loan', 'ohms-at-signs-of-a-short'],
      [{ log: [...looked, 'meas-rails:trips'] }, 'card-loan', 'ohms-at-signs-of-a-short'],
      [{ log: [...looked, 'meas-rails:trips'] }, 'supply-beside', '-'],
      [{ log: [...looked, 'meas-rails:trips', 'meas-coils:fine'] }, 'card-loan', '-'],
      [{ told: ['leak'] }, 'rig-board', 'look-before-rig'],
      [{ log: ['look-inside:wet'] }, 'rig-board', 'wet-keeps-ours-out'],
      [{ changed: ['storm'], log: looked }, 'rig-dimms', 'storm-on-rig'],
      [{ changed: ['storm'], log: [...looked, 'meas-coils:fine'] }, 'rig-dimms', '-'],
      [{ log: ['look-inside:burnt', 'meas-coils:fine'] }, 'rig-card', 'burnt-card-on-rig'],
    ]);
  });

  it('hang on no supply that was not measured, on no lead that was not looked at', () => {
    holds([
      [{ log: looked }, 'drive-loan', 'rails-before-good'],
      [{ log: [...looked, 'supply-beside:same'] }, 'drive-loan', 'rails-before-good'],
      [{ log: [...looked, 'meas-rails:within'] }, 'drive-loan', '-'],
      [{ log: [...looked, 'meas-rails:within', 'meas-rails:trips'] }, 'drive-loan', 'rails-before-good'],
      [{ log: [...looked, 'meas-rails:outside'] }, 'card-loan', 'bad-supply-keeps-ours-out'],
      [{ machine: { modularSupply: true }, log: [...looked, 'meas-rails:within'] }, 'drive-loan', 'lead-before-drive'],
      [{ machine: { modularSupply: true }, log: [...looked, 'meas-rails:within', 'census:plain'] }, 'drive-loan', '-'],
    ]);
  });

  it('lend a processor only after rails, coils and socket, and where it can help', () => {
    holds([
      [{ log: proven }, 'cpu-loan', '-'],
      [{ log: once }, 'cpu-loan', 'rails-twice-before-dear'],
      [{ log: once }, 'board-loan', 'rails-twice-before-dear'],
      [{ log: [...once, 'supply-alone:holds'] }, 'board-loan', '-'],
      [{ log: [...once, 'rails-log:steady'] }, 'cpu-loan', '-'],
      [{ log: once }, 'drive-loan', '-'],
      [{ log: [...looked, 'meas-rails:within', 'cpu-look:fine'] }, 'cpu-loan', 'coils-and-socket'],
      [{ log: [...proven, 'cpu-look:pins'] }, 'cpu-loan', 'coils-and-socket'],
      [{ log: [...proven, 'meas-coils:coil-open'] }, 'cpu-loan', 'coils-and-socket'],
      [{ told: ['no-reaction'], log: proven }, 'cpu-loan', 'processor-where-none-helps'],
      [{ changed: ['storm'], log: proven }, 'cpu-loan', 'processor-where-none-helps'],
      [{ changed: ['storm'], log: [...proven, 'rig-board:works-there'] }, 'cpu-loan', '-'],
      [{ changed: ['never-worked'], told: ['off-after-seconds'], log: proven }, 'board-loan', 'case-before-good'],
      [
        { changed: ['never-worked'], told: ['off-after-seconds'], log: [...proven, 'under-look:clean'] },
        'board-loan',
        '-',
      ],
    ]);
  });
});

describe('the owner’s word', () => {
  it('is there before anything is opened, lent, read, copied, written, ordered or sent', () => {
    const nothing = { agreed: [] };
    holds([
      [nothing, 'look-inside', 'word-open'],
      [nothing, 'dimm-loan', 'word-own-parts-in'],
      [nothing, 'start-bare', 'word-start-own'],
      [nothing, 'log-read', 'word-read'],
      [nothing, 'drive-image', 'word-copy'],
      [nothing, 'undo-update', 'word-write'],
      [{}, 'card-order', 'word-order-to-try'],
      [{ log: ['look-inside:clean'] }, 'card-send', 'word-send-out'],
      [{ agreed: ['open'] }, 'look-inside', '-'],
      [{ agreed: [], log: ['ask-open:yes'] }, 'look-inside', '-'],
      [{ agreed: [], log: ['ask-open:later'] }, 'look-inside', 'word-open'],
      [nothing, 'watch-start', '-'],
    ]);
  });
});

describe('the referee', () => {
  it('names the gravest sentence, and what it can hurt', () => {
    const worst = judge(standing({ told: ['smoke-bang'], agreed: [] }), 'supply-beside');
    expect(worst).toMatchObject({ rule: 'look-before-mains', harm: 'machine' });
    expect(judge(standing({}), 'ask-change')).toBeNull();
  });

  it('lets the technician’s own word open what harms the machine or ours, never data or what lacks a word', () => {
    const clicks = standing({ told: ['drive-clicks', 'smell'], log: [] });
    const rules = (open: 'offered' | 'own-word') => leftOpen(clicks, 'watch-start', open).map(({ rule }) => rule);
    expect(rules('offered')).toEqual(['look-before-mains', 'clicking-drive-spins']);
    expect(rules('own-word')).toEqual(['clicking-drive-spins']);
  });

  it('has read every step of the fault model and every step to come', () => {
    const ids = [...steps.steps.map(({ id }) => caseStep(id)), ...Object.keys(toCome.steps)];
    expect(ids.filter((id) => doingsOf(id) === undefined)).toEqual([]);
    expect(() => judge(standing({}), 'hum-a-tune')).toThrow('hum-a-tune');
  });

  it('knows an entry of a log by the name of today and by the name of the cases', () => {
    expect(caseEntry({ step: 'watch-start', outcome: 'no-post' })).toEqual({ step: 'watch-start', outcome: 'np' });
    expect(caseEntry({ step: 'look-inside', outcome: 'wet' })).toEqual({ step: 'look-inside', outcome: 'wet' });
  });

  it('calls each of its sentences by a name of its own', () => {
    expect(new Set(SENTENCES.map(({ rule }) => rule)).size).toBe(SENTENCES.length);
  });

  it('finds what is said or left unsaid at a proposal', () => {
    const wrong = (step: string, cautions: readonly string[], reasons: readonly string[]) =>
      wrongWithProposing(standing({ log: ['look-inside:clean'] }), { step, cautions, reasons }).map(({ rule }) => rule);
    expect(wrong('cmos-clear', ['M'], ['nothing-at-risk'])).toEqual(['caution-D', 'nothing-at-risk']);
    expect(wrong('cmos-clear', ['M', 'E', 'D'], ['likely'])).toEqual([]);
    expect(wrong('ask-change', [], ['nothing-at-risk', 'tells-nothing'])).toEqual(['tells-nothing']);
  });

  it('says which cautions are due by what is done, and where nothing can be without risk', () => {
    expect(cautionsDue('fw-update')).toEqual(['D', 'F']);
    expect(cautionsDue('cpu-loan')).toEqual(['M', 'D', 'P', 'B', 'K']);
    expect(cautionsDue('cpu-look')).toEqual(['P']);
    expect(cautionsDue('ask-change')).toEqual([]);
    const fresh = standing({});
    const started = standing({ log: ['watch-start:po'] });
    expect(canBeRiskless(fresh, 'ask-change')).toBe(true);
    expect(canBeRiskless(started, 'cmos-clear')).toBe(false);
    expect(canBeRiskless(fresh, 'look-picture')).toBe(false);
    expect(canBeRiskless(started, 'look-picture')).toBe(true);
  });
});
