import { describe, expect, it } from 'vitest';
import { changed, type Files, step } from '../../../../tests/builders/brokenModel.ts';
import { aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { STANDARD_MODEL_FILES } from '../loading/standardModel.ts';
import { stepOf } from '../model/special.ts';
import { deedsOf } from '../safety/deeds.ts';
import { changeModel } from '../shop/editModel.ts';

const line = (files: Files, id: string) =>
  files['deeds.json'].steps.find((one: { readonly id: string }) => one.id === id);

describe('a model is refused', () => {
  it('with a step of which it is not said what is done in it', () => {
    expect(changed((files) => files['deeds.json'].steps.pop())).toMatchObject({ file: 'deeds.json', field: 'steps' });
  });
  it.each([
    ['wall-watts', 'start'],
    ['fw-update', 'firmware-written'],
    ['dimm-loan', 'loaner-in:dimm'],
    ['drain-start', 'mains-pulled'],
  ])('with a step that hides what its own fields give away: %s %s', (id, deed) => {
    expect(
      changed((files) => {
        line(files, id).deeds = line(files, id).deeds.filter((one: string) => one !== deed);
      }),
    ).toMatchObject({ file: 'deeds.json', field: `steps ${id}`, because: `it does ${deed} and does not say so` });
  });
  it('with a deed that nobody knows, or one that is no step’s', () => {
    for (const deed of ['hums', 'settled', 'start:supply', 'loaner-in:nothing', 'loaner-in:dimm:dimm'])
      expect(
        changed((files) => {
          files['deeds.json'].work[0].deeds = [deed];
        }),
      ).toMatchObject({ file: 'deeds.json', because: `no deed ${deed}` });
  });
});

const STATE = {
  id: 'our-shelf',
  opening: 1,
  closing: 1,
  within: 'panel',
  ours: 0,
  source: 'common practice, no source',
};

describe('an assembly state', () => {
  it('is refused, by its name, where it is not said what opening it does', () => {
    const refused = changed((files) => files['assembly.json'].states.push(STATE));
    expect(refused).toMatchObject({ file: 'deeds.json', field: 'states' });
    expect(refused?.because).toContain('our-shelf');
    expect(changed((files) => delete files['deeds.json'].states.card)?.because).toContain('card');
  });
  it('is refused where nobody knows it, or what opening it does', () => {
    expect(changed((files) => Object.assign(files['deeds.json'].states, { attic: null }))?.because).toContain('attic');
    expect(changed((files) => Object.assign(files['deeds.json'].states, { card: 'start' }))).toMatchObject({
      file: 'deeds.json',
      field: 'states.card',
    });
  });
  it('of a shop’s own does to the machine what the shop says it does', () => {
    const files = structuredClone(STANDARD_MODEL_FILES) as Files;
    const made = changeModel(files, [
      { file: 'assembly.json', path: 'states.our-shelf', after: STATE },
      { file: 'deeds.json', path: 'states.our-shelf', after: 'board-out' },
      { file: 'steps.json', path: 'steps.fan-finger.open', after: ['our-shelf'] },
    ]);
    if ('refused' in made) throw new Error(`${made.file} ${made.field}: ${made.because}`);
    const done = deedsOf(made.model, aTracingCase(), stepOf(made.model, 'fan-finger'));
    expect([...done]).toEqual(expect.arrayContaining(['panel-open', 'board-out']));
  });
});

describe('a shop’s own model', () => {
  const own = (change: (files: Files) => { readonly path: string; readonly after: unknown }) => {
    const files = structuredClone(STANDARD_MODEL_FILES) as Files;
    const { path, after } = change(files);
    return changeModel(STANDARD_MODEL_FILES, [{ file: 'steps.json', path, after }]);
  };
  const done = (made: ReturnType<typeof own>, id: string) =>
    'refused' in made ? made : made.model.steps.find((one) => one.id === id)?.deeds;

  it('has a step of its own: where it does not say what is done in it, the worst is taken', () => {
    const made = own((files) => ({
      path: 'steps.our-look',
      after: { ...step(files, 'fan-finger'), id: 'our-look', cautions: ['hot', 'sharp'] },
    }));
    expect(done(made, 'our-look')).toEqual(
      expect.arrayContaining(['mains-on', 'start', 'owners-system-started', 'drive-powered', 'drive-worked']),
    );
  });
  it('lets a delivered step write: then it says so, whatever was delivered', () => {
    const made = own(() => ({ path: 'steps.space-look.needs', after: ['start-own', 'read', 'write'] }));
    if ('refused' in made) expect(made).toMatchObject({ file: 'steps.json' });
    else expect(done(made, 'space-look')).toContain('write-to-owners-drive');
  });
});
