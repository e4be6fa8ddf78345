import { describe, expect, it } from 'vitest';
import { fitPart } from '../../core/commands/bench/parts/fitPart.ts';
import { movePart } from '../../core/commands/bench/parts/movePart.ts';
import type { JobId, PartId } from '../../core/ids.ts';
import { epochMs, minutes } from '../../core/time.ts';
import { draft } from '../builders/shopFolder.ts';
import type { PureShop } from './pureShop.ts';
import { aShopWithTwoMachines, placeOf } from './twoMachines.ts';

const job = 'j1' as JobId;
const [d1, d2] = ['d1' as PartId, 'd2' as PartId];

/** Her modules sit in A1 and A2; the one of A2 lies in the tray, and A1 is free. */
function oneModuleOut(): PureShop {
  const { real } = aShopWithTwoMachines();
  for (const part of [d1, d2])
    real.ask(movePart, {
      job,
      part,
      from: real.parts.get(part)?.place ?? placeOf('bin ?'),
      to: placeOf('tray t|j1'),
      why: 'hand',
      says: null,
    });
  return real;
}
const into = (slot: string, says: string | null) => ({
  job,
  part: d2,
  from: placeOf('tray t|j1'),
  to: placeOf(`slot m1 ${slot}`),
  why: 'hand' as const,
  says,
});
const fitting = (says?: string) => ({
  job,
  part: d2,
  slot: 'A1',
  startedAt: epochMs(1),
  handsOn: minutes(2),
  why: 'fitting' as const,
  ...(says !== undefined && { says }),
});

describe('a part taken out goes back into its own slot, or the move says why not', () => {
  it('by hand into another slot it is refused, with the slot it sat in, until a reason is given', () => {
    const shop = oneModuleOut();
    const before = shop.journal.length;
    expect(shop.ask(movePart, into('A1', null))).toMatchObject({
      ok: false,
      refusal: { refused: 'not-its-own-slot', recorded: 'A2', slot: 'A1' },
    });
    expect(shop.journal.length).toBe(before);
    expect(shop.ask(movePart, into('A1', 'the latch of A2 is broken')).ok).toBe(true);
    expect(shop.journal).toContainEqual(
      expect.objectContaining({
        kind: 'part-moved',
        body: expect.objectContaining({ why: { by: 'hand', says: 'the latch of A2 is broken' } }),
      }),
    );
    // Put there for now: it still belongs where it was found.
    expect(shop.machines.get('m1')?.belongsIn).toMatchObject({ A2: d2 });
  });

  it('fitted there for a reason it belongs there from then on; without one it is not fitted', () => {
    const shop = oneModuleOut();
    shop.write(draft('job:j1', 'stage-entered', { stage: 'fitting', why: 'goes-on' }));
    expect(shop.ask(fitPart, fitting())).toMatchObject({ ok: false, refusal: { refused: 'not-its-own-slot' } });
    expect(shop.ask(fitPart, fitting('the latch of A2 is broken')).ok).toBe(true);
    expect(shop.machines.get('m1')?.belongsIn).toMatchObject({ A1: d2 });
    expect(shop.machines.get('m1')?.belongsIn.A2).toBeUndefined();
  });
});
