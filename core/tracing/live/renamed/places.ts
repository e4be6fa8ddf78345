import type { RawFileName } from '../loading/raw.ts';

/**
 * Where renamed ids stand in a model's files. `*` is any key or list entry; `<kind>` is a key that is an id of that kind;
 * `=kind` after the last segment: the text there is one; `=came`: a step and outcomes of it. `<steps>` also says whose
 * outcomes those below it are.
 */
export const ID_PLACES: { readonly [file in RawFileName]?: readonly string[] } = {
  'faults.json': ['profiles.<profiles>', 'faults.*.weights.<groups>', 'faults.*.profile=profiles'],
  'symptoms.json': [
    'confused.*.told=groups',
    'confused.*.shows=groups',
    'seenAs.*.shows=groups',
    'seenAs.*.seen=groups',
    'nowAndThen.groups.*=groups',
    'symptoms.*.groups.*=groups',
  ],
  'assembly.json': ['switches.*.withinSteps.*.*=steps', 'switches.*.cautions.*.*=cautions'],
  'steps.json': [
    'steps.<steps>.id=steps',
    'steps.<steps>.outcomes.<outcomes>.id=outcomes',
    'steps.<steps>.normal=outcomes',
    'steps.<steps>.places.*.findings.*=outcomes',
    'steps.<steps>.tells.*.chance.<outcomes>',
    'steps.<steps>.others.<outcomes>',
    'steps.<steps>.nothing.<outcomes>',
    'steps.<steps>.byGroup.<groups>.<outcomes>',
    'steps.<steps>.groups.*=groups',
    'steps.<steps>.cautions.*=cautions',
  ],
  'dangers.json': ['harm.*.steps.*=steps', 'gates.*.holds.*=steps', 'gates.*.after.*=came', 'gates.*.until.*.*=came'],
  'safety.json': [
    'rules.*.spares.*=steps',
    'rules.*.after.*=came',
    'rules.*.found.*=came',
    'rules.*.liftedBy.*=came',
    'rules.*.until.*.*=came',
  ],
  'deeds.json': [
    'steps.<steps>.id=steps',
    'steps.<steps>.<fields>',
    'work.*.<fields>',
    'others.*.<fields>',
    'work.*.cautions.*=cautions',
    'others.*.cautions.*=cautions',
  ],
  'shop.json': ['habit.first.*=steps', 'habit.byGroup.<groups>.*=steps'],
};
