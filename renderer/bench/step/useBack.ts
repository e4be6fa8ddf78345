import type { JobSheet } from '../../../core/contract/screens.ts';
import type { Place } from '../../../core/custody/place.ts';
import type { PartId } from '../../../core/ids.ts';
import type { Words } from '../../../core/wording/wordsFor.ts';
import { useDoes } from '../../link/does.ts';

export type Back = { readonly can: boolean; readonly problem: Words | null; readonly go: () => Promise<void> };

/** Back to how it came: what is ours goes to its bin, what is the owner's to where it belongs, each move in the ledger. */
export function useBack({ job, machine, parts }: JobSheet): Back {
  const { does, problem } = useDoes();
  const ours = parts.flatMap((part) =>
    part.belongs.to === 'shop' && part.place.at === 'slot' && part.place.machine === machine.id && part.home
      ? [{ part: part.id, from: part.place, to: part.home }]
      : [],
  );
  const own = Object.entries(machine.belongsIn).flatMap(([slot, id]) => {
    const part = parts.find((one) => one.id === id);
    const to: Place = { at: 'slot', machine: machine.id, slot };
    const movable = part?.place.at === 'tray' || part?.place.at === 'bench' || part?.place.at === 'rig';
    return part && movable && part.belongs.to === 'owner' ? [{ part: part.id, from: part.place, to }] : [];
  });
  const moves: readonly { readonly part: PartId; readonly from: Place; readonly to: Place }[] = [...ours, ...own];
  return {
    can: moves.length > 0,
    problem,
    go: async () => {
      for (const move of moves) {
        if (!(await does('movePart', { job: job.id, ...move, why: 'closing-up', says: null }))) return;
      }
    },
  };
}
