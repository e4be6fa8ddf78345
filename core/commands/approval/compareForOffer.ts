import { type CompareContext, type Comparison, compareParts } from '../../approval/compare.ts';
import type { Part } from '../../custody/ledger.ts';
import { isM2Slot } from '../../custody/m2.ts';
import type { View } from '../../entries/view.ts';
import type { PartId } from '../../ids.ts';
import type { Refusal } from '../../refusal.ts';

/**
 * Sets the part on offer beside the one that failed, with what this machine uses: modules and drives inside, the
 * processor on the board's list, the case around it. The desk adds what only the owner knows (`uses`).
 */
export function compareForOffer(
  view: View,
  had: PartId,
  offered: PartId,
  uses: CompareContext['uses'] = {},
): Comparison | Refusal {
  const [before, after] = [view.parts.get(had), view.parts.get(offered)];
  if (!before || !after) return { refused: 'no-such-part', part: before ? offered : had };
  const { job, machine } = view;
  const seated = Object.entries(machine?.atTakingIn ?? {}).flatMap(([slot, id]) => {
    const part = view.parts.get(id);
    return part ? [{ part, inM2: machine?.slots.some((one) => one.id === slot && isM2Slot(one)) ?? false }] : [];
  });
  const own = seated.map(({ part }) => part);
  const of = (kind: Part['kind']) => own.filter((part) => part.kind === kind);
  const [processor, chassis] = [of('processor')[0], of('case')[0]];
  const onSata = seated.filter(({ part, inM2 }) => !inM2 && String(part.attributes.bus ?? '').startsWith('SATA'));
  const amps = of('fan').map((fan) => Number(fan.attributes.amps));
  return compareParts(before, after, {
    uses: {
      'dimm-slots': of('dimm').length,
      'sata-ports': onSata.length,
      'm2-slots': seated.filter(({ part, inM2 }) => inM2 && part.kind === 'drive').length,
      'further-card-slots': of('add-in').length,
      ...uses,
    },
    modules: of('dimm').map((module) => module.attributes),
    holdsKey: job?.before?.encryption !== 'no',
    ...(processor && { processor }),
    ...(chassis && { case: chassis.attributes }),
    ...(amps.length > 0 && amps.every(Number.isFinite) && { fanAmps: amps.reduce((sum, one) => sum + one, 0) }),
  });
}
