import type { FaultModel } from '../../live/types.ts';
import type { Played, Position } from '../play/play.ts';
import { holds, isStep } from './logHas.ts';

/** One point at which something was asked of the engine; `null`: nothing of it can be asked of this model, or the log never came there. */
export type Point = { readonly after: readonly string[]; readonly ok: boolean | null; readonly got: string };

const firstAt = (model: FaultModel, played: Played, after: readonly string[]): number =>
  played.positions.findIndex((position) => after.every((what) => holds(model, position, what)));

/** Was one of the steps asked for proposed first, as soon as the log was so far? */
export function judgeFirstSteps(model: FaultModel, played: Played): readonly Point[] {
  return played.case.askedFirst.map(({ after, oneOf, within }) => {
    const at = firstAt(model, played, after);
    const position = played.positions[at];
    const asked = oneOf.filter((id) => ENDS[id] || model.steps.some((step) => isStep(model, id, step.id)));
    if (!position || asked.length === 0) return { after, ok: null, got: '' };
    if (asked.some((id) => !ENDS[id] && holds(model, position, id))) return { after, ok: true, got: '' };
    const next = played.positions.slice(at, at + within);
    const ok = asked.some((id) =>
      next.some((one) => (ENDS[id] ? ENDS[id](one) : one.answer.step !== null && isStep(model, id, one.answer.step))),
    );
    return { after, ok, got: next.map(({ answer }) => answer.step ?? answer.verdict?.kind ?? '').join(', ') };
  });
}

const ends =
  (...kinds: readonly string[]) =>
  ({ answer }: Position): boolean =>
    answer.step === null && answer.verdict !== null && kinds.includes(answer.verdict.kind);

const ENDS: Readonly<Record<string, (position: Position) => boolean>> = {
  settled: ends('confirmed', 'named', 'cured', 'not-reproduced'),
  'hand-over': ends('hand-over'),
};

/** Was the likeliest fault one of those that a master thinks of, and none likelier than it may be? */
export function judgeFirstThoughts(model: FaultModel, played: Played): readonly Point[] {
  return played.case.firstThought.map(({ after, oneOf, notAbove = {} }) => {
    const position = played.positions[firstAt(model, played, after)];
    if (!position) return { after, ok: null, got: '' };
    const faults = position.answer.suspects.flatMap((one) => one.faults).toSorted((a, b) => b.p - a.p);
    const [first] = faults;
    const chanceOf = (id: string) => faults.find((one) => one.id === id)?.p ?? 0;
    const thought = oneOf === undefined || oneOf.some((id) => id === first?.id);
    const tooLikely = Object.entries(notAbove).filter(([id, most]) => chanceOf(id) > most);
    const got = [
      `${first?.id ?? ''} ${percent(first?.p ?? 0)}`,
      ...tooLikely.map(([id]) => `${id} ${percent(chanceOf(id))}`),
    ];
    return { after, ok: thought && tooLikely.length === 0, got: got.join(', ') };
  });
}

const percent = (p: number): string => `${Math.round(100 * p)} %`;
