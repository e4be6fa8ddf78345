import { describe, expect, it } from 'vitest';
import { herMachine, hers, wall } from '../../../tests/builders/harrowmouth.ts';
import type { Attributes, PartFacts } from '../../custody/part.ts';
import type { MachineView } from '../machineView.ts';
import { cardLeads, onSataLeads, supplyBudget } from './power.ts';

const without = ({ attributes, ...part }: PartFacts, gone: string): PartFacts => ({
  ...part,
  attributes: Object.fromEntries(Object.entries(attributes).filter(([name]) => name !== gone)),
});
const holding = (...parts: readonly PartFacts[]): MachineView => ({
  ...herMachine,
  parts: parts.map((part) => ({ slot: part.id, part })),
});
const drive = (kind: 'drive' | 'optical-drive', attributes: Attributes): PartFacts => ({
  ...wall.S12,
  kind,
  attributes,
});

describe('leads for cards that nobody counted', () => {
  const uncounted = without(wall.S05, 'lead-card-8').attributes;
  const lookedAt = (at: 'part' | 'supply') => cardLeads(uncounted, [wall.S04.attributes], at).map(({ look }) => look);
  it('are counted on the supply that is tried, or on the one that the card is tried beside', () => {
    expect(lookedAt('part')).toEqual([[{ at: 'part', attribute: 'lead-card-8' }]]);
    expect(lookedAt('supply')).toEqual([[{ at: 'supply', attribute: 'lead-card-8' }]]);
  });
  it('are not asked for before the plugs of every card are known', () => {
    const plugs = (at: 'part' | 'supply') => cardLeads(uncounted, [{}], at).map(({ says, look }) => [says, look]);
    expect(plugs('part')).toEqual([['unknown', [{ at: 'card', attribute: 'power-plugs' }]]]);
    expect(plugs('supply')).toEqual([['unknown', [{ at: 'part', attribute: 'power-plugs' }]]]);
  });
});

describe('what a machine asks of its supply', () => {
  const { processor, card, supply } = hers;
  const asked = (...parts: readonly PartFacts[]) => supplyBudget(holding(...parts), supply.part, 'supply');
  it('is its processor, its cards and the rest together', () => {
    expect(asked(processor.part, card.part)).toMatchObject({ says: 'yes', part: 65 + 120 + 75, place: 550, look: [] });
  });
  it('is not known while one of them is not, and that one is to be looked at', () => {
    expect(asked(processor.part, without(card.part, 'watts'))).toMatchObject({
      says: 'unknown',
      look: [{ at: 'card', attribute: 'watts' }],
    });
    expect(asked(without(processor.part, 'watts'), card.part)).toMatchObject({
      says: 'unknown',
      look: [{ at: 'processor', attribute: 'watts' }],
    });
    expect(asked(card.part)).toMatchObject({ says: 'unknown', look: [{ at: 'processor', attribute: 'watts' }] });
  });
});

describe('drives on a SATA lead', () => {
  it('are those with SATA plugs, optical ones too: no M.2 module whatever it speaks, and no other bus', () => {
    expect(onSataLeads(holding(drive('drive', { bus: 'SATA', size: '2.5"' })))).toBe(1);
    expect(onSataLeads(holding(drive('optical-drive', { bus: 'SATA', size: '5.25"' })))).toBe(1);
    expect(onSataLeads(holding(drive('drive', { bus: 'SATA', size: 'M.2' })))).toBe(0);
    expect(onSataLeads(holding(drive('drive', { bus: 'NVMe', size: '2.5"' })))).toBe(0);
    expect(onSataLeads(holding(hers.card.part))).toBe(0);
    expect(onSataLeads(herMachine)).toBe(2);
  });
});
