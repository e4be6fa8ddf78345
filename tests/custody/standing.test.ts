import { describe, expect, it } from 'vitest';
import { provePart } from '../../core/commands/wall/provePart.ts';
import { asItCounts } from '../../core/custody/asItCounts.ts';
import type { PartId } from '../../core/ids.ts';
import { epochMs } from '../../core/time.ts';
import { aShopWithTwoMachines } from './twoMachines.ts';

const DAY = 86_400_000;
const id = 'd4' as PartId;
const prove = { part: id, where: 'second rig', scopes: ['starts' as const], works: true, how: null };

/** Our module, just proved on the rig. */
function proved() {
  const { real } = aShopWithTwoMachines();
  expect(real.ask(provePart, prove).ok).toBe(true);
  const part = real.parts.get(id);
  if (part?.standing.is !== 'known-good' || part.standing.lapses === null) throw new Error('not proved');
  return { real, part, lapses: part.standing.lapses };
}

describe('"known good" holds until its day', () => {
  it('holds for the shop’s days from the proof, and is unproved from then on, wherever the part is loaded', () => {
    const { real, part, lapses } = proved();
    const days = real.shop.settings?.rules.standingLapsesDays ?? 0;
    expect(lapses - (part.standing.is === 'known-good' ? part.standing.evidence.at : 0)).toBe(days * DAY);
    expect(asItCounts(part, epochMs(lapses - 1)).standing.is).toBe('known-good');
    expect(asItCounts(part, lapses).standing).toEqual({ is: 'unproved', why: 'lapsed' });
    real.at = lapses;
    expect(real.view({ parts: [id] }).parts.get(id)?.standing).toEqual({ is: 'unproved', why: 'lapsed' });
  });

  it('proved anew it holds again, from the new day', () => {
    const { real, lapses } = proved();
    real.at = epochMs(lapses + DAY);
    expect(real.ask(provePart, prove).ok).toBe(true);
    expect(real.view({ parts: [id] }).parts.get(id)?.standing).toMatchObject({
      is: 'known-good',
      evidence: { at: lapses + DAY, by: 'bram', where: 'second rig', scopes: ['starts'] },
    });
  });
});
