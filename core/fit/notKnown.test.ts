import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { herMachine, wall } from '../../tests/builders/harrowmouth.ts';
import type { PartFacts, PartKind } from '../custody/part.ts';
import { attributeRule, attributesOf } from './attributes.ts';
import { fits } from './fits.ts';
import type { MachineView } from './machineView.ts';

const without = (part: PartFacts, ...gone: readonly string[]): PartFacts => ({
  ...part,
  attributes: Object.fromEntries(Object.entries(part.attributes).filter(([name]) => !gone.includes(name))),
});
describe('what is not known', () => {
  const parts = [...Object.values(wall).map((part) => ({ part, slots: herMachine.slots.slots.map(({ id }) => id) }))];
  const aTrial = fc
    .constantFrom(...parts)
    .chain(({ part, slots }) => fc.tuple(fc.constant(part), fc.constantFrom(...slots)));
  const forget = fc.array(
    fc.constantFrom(
      ...new Set(
        (['board', 'processor', 'cooler', 'dimm', 'card', 'supply', 'drive', 'case', 'fan'] as PartKind[]).flatMap(
          attributesOf,
        ),
      ),
    ),
    { maxLength: 12 },
  );
  const forgotten = (machine: MachineView, names: readonly string[]): MachineView => ({
    ...machine,
    parts: machine.parts.map((held) => ({ ...held, part: without(held.part, ...names) })),
  });

  it('is never turned into a yes: forgetting facts about the part makes no verdict a yes', () => {
    fc.assert(
      fc.property(aTrial, forget, ([part, slot], names) => {
        if (fits(part, slot, herMachine).fits !== 'yes')
          expect(fits(without(part, ...names), slot, herMachine).fits).not.toBe('yes');
      }),
      { numRuns: 1_000 },
    );
  });
  it('about the machine leaves every reason that is unknown with something to look at', () => {
    fc.assert(
      fc.property(aTrial, forget, forget, ([part, slot], names, around) => {
        const { fits: says, reasons } = fits(without(part, ...names), slot, forgotten(herMachine, around));
        for (const reason of reasons) expect(reason.look.length > 0).toBe(reason.says === 'unknown');
        expect(says === 'yes').toBe(reasons.every((reason) => reason.says === 'yes'));
      }),
      { numRuns: 1_000 },
    );
  });
  it('of a whole machine makes nothing fit for sure but what asks nothing of it', () => {
    const blank = forgotten(
      herMachine,
      (['board', 'processor', 'cooler', 'dimm', 'card', 'supply', 'drive', 'case', 'fan'] as PartKind[]).flatMap(
        attributesOf,
      ),
    );
    for (const { part, slots } of parts)
      for (const slot of slots) expect([part.name, slot, fits(part, slot, blank).fits]).not.toContain('yes');
  });
  it('points only at attributes that can be recorded', () => {
    for (const { part, slots } of parts)
      for (const slot of slots)
        for (const { look } of fits(without(part, ...Object.keys(part.attributes)), slot, forgotten(herMachine, []))
          .reasons)
          for (const { at, attribute } of look)
            if (at === 'part')
              expect(
                attributesOf(part.kind as PartKind).some((name) => name === attribute && !attributeRule(name).derived),
              ).toBe(true);
  });
});
