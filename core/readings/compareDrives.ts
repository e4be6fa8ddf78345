import type { SaidDrive } from '../custody/machineReport.ts';

/** A drive as read at some time; with its serial number where the owner let us keep it. */
export type ReadDrive = SaidDrive & { readonly serial?: string | null };

/** Figures that only ever grow when a drive gets worse; power-on hours grow with every hour and tell how long it ran. */
export const WORSE_WHEN_GROWN = ['reallocated', 'pending', 'uncorrectable', 'percentageUsed', 'mediaErrors'] as const;
export type Figure = (typeof WORSE_WHEN_GROWN)[number];

export type FigureChange = {
  readonly figure: Figure;
  readonly before: number;
  readonly after: number;
  readonly change: 'grew' | 'same' | 'fell';
};
export type DriveChange =
  | {
      readonly is: 'compared';
      readonly model: string | null;
      readonly by: 'serial' | 'model';
      readonly figures: readonly FigureChange[];
      /** Figures that only one of the two readings has: no change can be told. */
      readonly notCompared: readonly Figure[];
      readonly health: { readonly before: SaidDrive['health']; readonly after: SaidDrive['health'] };
      /** Hours it ran between the two readings; `null` when not said, or when it counts backwards. */
      readonly hours: number | null;
    }
  /** Several drives of this model, and no serial number to tell them apart. */
  | { readonly is: 'cannot-tell-which'; readonly model: string | null }
  | { readonly is: 'only-before' | 'only-after'; readonly model: string | null };

/**
 * What changed in the drives between two readings: did pending sectors grow on our bench?
 * Drives are matched by serial number, else by model where one drive of that model is left on each side; never by order.
 */
export function compareDrives(before: readonly ReadDrive[], after: readonly ReadDrive[]): readonly DriveChange[] {
  const left = new Set(before);
  const right = new Set(after);
  const changes: DriveChange[] = [];
  const pair = (old: ReadDrive, now: ReadDrive, by: 'serial' | 'model') => {
    left.delete(old);
    right.delete(now);
    changes.push(compared(old, now, by));
  };
  for (const now of after) {
    const same = before.filter((old) => left.has(old) && now.serial != null && old.serial === now.serial);
    if (same.length === 1 && same[0]) pair(same[0], now, 'serial');
  }
  for (const model of new Set([...left, ...right].map((drive) => drive.model))) {
    const olds = [...left].filter((drive) => drive.model === model);
    const nows = [...right].filter((drive) => drive.model === model);
    const [old, now] = [olds[0], nows[0]];
    const strangers = old?.serial != null && now?.serial != null && old.serial !== now.serial;
    if (model !== null && olds.length === 1 && nows.length === 1 && old && now && !strangers) pair(old, now, 'model');
    else if (olds.length > 0 && nows.length > 0 && !strangers) {
      for (const drive of olds) left.delete(drive);
      for (const drive of nows) right.delete(drive);
      changes.push({ is: 'cannot-tell-which', model });
    }
  }
  return [
    ...changes,
    ...[...left].map(({ model }): DriveChange => ({ is: 'only-before', model })),
    ...[...right].map(({ model }): DriveChange => ({ is: 'only-after', model })),
  ];
}

function compared(old: ReadDrive, now: ReadDrive, by: 'serial' | 'model'): DriveChange {
  const figures = WORSE_WHEN_GROWN.flatMap((figure): readonly FigureChange[] => {
    const [before, after] = [old[figure], now[figure]];
    if (before === null || after === null) return [];
    return [{ figure, before, after, change: after > before ? 'grew' : after < before ? 'fell' : 'same' }];
  });
  const ran = old.powerOnHours === null || now.powerOnHours === null ? null : now.powerOnHours - old.powerOnHours;
  return {
    is: 'compared',
    model: now.model,
    by,
    figures,
    notCompared: WORSE_WHEN_GROWN.filter((figure) => (old[figure] === null) !== (now[figure] === null)),
    health: { before: old.health, after: now.health },
    hours: ran !== null && ran >= 0 ? ran : null,
  };
}
