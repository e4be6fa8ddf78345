import type { TracingSheet, WallSheet } from '../../../core/contract/screens.ts';
import { COULD_NOT } from '../../../core/tracing/live/couldNot.ts';
import { inShort } from '../../../core/tracing/live/offer/inShort.ts';
import type { Caution as CautionId, StepView as Offered } from '../../../core/tracing/live/types.ts';
import type { IconName } from '../../kit/icons.tsx';
import { silhouetteOf } from '../../kit/mark/silhouettes.ts';
import type { Words } from '../../kit/text/words.tsx';
import { reasonWords } from '../../terms/reasonWords.ts';
import { cautionText, kindName, outcomeName, placeName, stateName, stepDoes, stepName } from '../../terms/terms.ts';
import { standingWords } from '../../terms/wallRows.ts';
import { placeWords } from '../inside/insideOf.ts';
import type { Borrow, CautionShown, OtherStep, StepShown } from '../next/stepView.ts';

const MOST_REASONS = 2;
/** Facts that are told by their odds: out of sight while hands are in the case. */
const WITH_ODDS: ReadonlySet<string> = new Set(['splits', 'likely']);
/** Can hurt a person, or data beyond mending: always in sight. */
const HARMFUL: ReadonlySet<CautionId> = new Set([
  'mains',
  'write',
  'disk-key',
  'cooler',
  'firmware',
  'live',
  'supply-shut',
  'eyes',
  'battery',
]);
const ICONS: Readonly<Record<CautionId, IconName>> = {
  mains: 'mains',
  static: 'strap',
  hot: 'heat',
  sharp: 'edge',
  lift: 'two',
  cooler: 'heat',
  cell: 'stop',
  write: 'data',
  'disk-key': 'lock',
  borrowed: 'stop',
  pins: 'hand',
  firmware: 'stop',
  network: 'lock',
  fumes: 'air',
  live: 'hand',
  'supply-shut': 'stop',
  eyes: 'stop',
  battery: 'stop',
  gloves: 'hand',
  'chip-volts': 'hand',
};

export const cautionsOf = (ids: readonly CautionId[]): readonly CautionShown[] =>
  ids.map((id) => ({ icon: ICONS[id], text: cautionText(id), harmful: HARMFUL.has(id) }));

/** The engine's step as the bench reads it. */
export function stepInWords(step: Offered, sheet: TracingSheet, wall: WallSheet | undefined, words: Words): StepShown {
  const { offer, handling } = sheet;
  const { saved } = offer;
  const [first, ...more] = step.facts.map((fact) => reasonWords(fact, words));
  const plain = step.facts.find((fact) => !WITH_ODDS.has(fact.fact));
  const does = stepDoes(step.step);
  const borrow = borrowOf(step, wall, words);
  return {
    id: step.step,
    heading: stepName(step.step),
    handsOn: Math.round(step.handsOn),
    waiting: Math.round(step.waiting),
    ...(saved >= 1 && { saves: saved }),
    why: [
      shortWords(sheet, words),
      does === stepName(step.step) ? '' : `${does}.`,
      ...movesOf(step, words),
      first,
      ...more.slice(0, MOST_REASONS - 1),
    ]
      .filter(Boolean)
      .join(' '),
    reason: plain ? reasonWords(plain, words) : `${does}.`,
    ...(borrow && { borrow }),
    cautions: cautionsOf(step.cautions),
    outcomes: [
      ...step.outcomes.map(({ outcome, p }) => ({ id: outcome, says: outcomeName(outcome), chance: p })),
      { id: COULD_NOT, says: outcomeName(COULD_NOT) },
    ],
    ...lookOf(handling[step.step]),
  };
}

/** Less likely than this, nothing stands out, and nothing is said of it. */
const STANDS_OUT = 0.35;

/** The whole of it in a sentence: what is likeliest, and the cheapest step that would prove it. */
function shortWords({ offer, suspects }: TracingSheet, { t, odds }: Words): string {
  const { likeliest, proof } = inShort(offer, suspects);
  if (!likeliest || likeliest.p < STANDS_OUT) return '';
  const said = t('bench.in-short.likeliest', { part: kindName(likeliest.part), odds: odds(likeliest.p) });
  if (!proof || proof.step === offer.next?.step) return said;
  return `${said} ${t('bench.in-short.proof', { step: stepName(proof.step), minutes: Math.round(proof.minutes) })}`;
}

/** Of a step that looks at several places in one go: each with what can be found there. */
function lookOf(known: TracingSheet['handling'][string] | undefined): Pick<StepShown, 'look'> {
  if (!known || known.places.length === 0) return {};
  const places = known.places.map(({ id, findings }) => ({
    id,
    ...placeName(id),
    findings: findings.map((finding) => ({ id: finding, says: outcomeName(finding) })),
  }));
  return { look: { places, nothing: known.normal } };
}

/** What is to be closed and opened before the step, each in one sentence. */
function movesOf(step: Offered, words: Words): readonly string[] {
  return (['close', 'open'] as const).flatMap((direction) => {
    const states = step.moves.filter((move) => move.direction === direction).map(({ state }) => stateName(state));
    return states.length > 0 ? [words.t(`bench.state.${direction}`, { state: words.list(states) })] : [];
  });
}

/** A step that is not offered, chosen by hand: its outcomes without odds. */
export function handStepInWords(id: string, tracing: TracingSheet, words: Words): StepShown | null {
  const known = tracing.handling[id];
  if (!known) return null;
  return {
    id,
    heading: stepName(id),
    handsOn: known.handsOn,
    waiting: known.waiting,
    why: `${stepDoes(id)}. ${words.t('bench.chosen-by-hand')}`,
    cautions: cautionsOf(known.cautions),
    outcomes: known.outcomes.map((outcome) => ({ id: outcome, says: outcomeName(outcome) })),
    ...lookOf(known),
  };
}

export const otherInWords = (step: Offered, words: Words): OtherStep => ({
  id: step.step,
  heading: stepName(step.step),
  handsOn: Math.round(step.handsOn),
  waiting: Math.round(step.waiting),
  reason: step.facts[0] ? reasonWords(step.facts[0], words) : stepDoes(step.step),
});

function borrowOf(step: Offered, wall: WallSheet | undefined, words: Words): Borrow | null {
  const part = wall?.parts.find((one) => step.borrows.some(({ loaner }) => loaner === one.id));
  if (!part) return null;
  return {
    tag: part.tag,
    what: part.name,
    place: placeWords(part.place, words),
    standing: standingWords(part, words),
    shape: silhouetteOf(part.kind),
  };
}
