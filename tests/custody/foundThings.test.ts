import { describe, expect, it } from 'vitest';
import { goHomeAsItCame } from '../../core/commands/home/goHomeAsItCame.ts';
import { handOver } from '../../core/commands/home/handOver.ts';
import { addThing } from '../../core/commands/intake/addThing.ts';
import type { Command } from '../../core/commands/kernel/command.ts';
import { applyToView, type View } from '../../core/entries/view.ts';
import { asShown } from '../builders/asShown.ts';
import { aJobAt, askingOf, judith, viewOf } from '../builders/jobAt.ts';

const asking = askingOf();
const job = aJobAt('tracing').id;
const OWNER = judith.name.value ?? '';
const found = (thing: string, count = 1) =>
  addThing.input.parse({ job, thing, count, where: 'between drive cage and case' });

/** The view after a command that was carried out. */
function after<Input>(view: View, command: Command<string, Input>, input: Input): View {
  const decision = command.decide(view, input, asking);
  if (!decision.ok) throw new Error(JSON.stringify(decision.refusal));
  return decision.entries.reduce((now, entry) => applyToView(now, entry, { at: asking.at, by: asking.by }), view);
}

/** A stick and three loose screws were found in the case; the owner said no, and the machine waits to go home. */
function aCaseWithThingsInIt(): View {
  const things = [found('memory stick'), found('loose screw', 2), found('loose screw')];
  const open = things.reduce((view, thing) => after(view, addThing, thing), viewOf(aJobAt('tracing')));
  return after(open, goHomeAsItCame, { job, why: 'declined' as const });
}

const handedOver = (view: View, returned: { thing: string; count: number }[]) => {
  const signed = { name: OWNER, drawn: null, contentHash: null };
  const input = {
    job,
    collectedBy: OWNER,
    signed,
    returned,
    oursOff: [],
    differences: [],
    unpaid: 'By transfer, on the bill.',
  };
  return handOver.decide(view, asShown(handOver, view, input, asking), asking);
};

describe('what was found in the case goes back to its owner', () => {
  it('the machine is not handed over while one of the things is not ticked back', () => {
    expect(handedOver(aCaseWithThingsInIt(), [{ thing: 'loose screw', count: 2 }])).toEqual({
      ok: false,
      refusal: {
        refused: 'came-along-missing',
        things: [
          { thing: 'memory stick', count: 1 },
          { thing: 'loose screw', count: 1 },
        ],
      },
    });
  });

  it('with all of them ticked back it is, and the journal says what was given back', () => {
    const returned = [
      { thing: 'memory stick', count: 1 },
      { thing: 'loose screw', count: 3 },
    ];
    const decision = handedOver(aCaseWithThingsInIt(), returned);
    if (!decision.ok) throw new Error(JSON.stringify(decision.refusal));
    const handOverEntry = decision.entries.find(({ kind }) => kind === 'handed-over');
    expect(handOverEntry?.body).toMatchObject({ returned, asItCame: true });
    expect(decision.entries.at(-1)).toMatchObject({ kind: 'stage-entered', body: { stage: 'gone-home' } });
  });
});
