import type { z } from 'zod';
import type { TracingDoor } from '../../../bench/tracingDoor.ts';
import type { PartId } from '../../../ids.ts';
import type { WhichOfSeveral } from '../../../job/entries.ts';
import type { Refusal } from '../../../refusal.ts';
import { zLine } from '../../kernel/fields.ts';

/** Which of several it is, as it is printed there or the machine says it; null leaves it open, and the papers say so. */
export const zWhichOne = zLine.nullable().exactOptional();
type Asked = { readonly fault: string; readonly part: PartId | null; readonly which?: z.infer<typeof zWhichOne> };

/**
 * What a verdict keeps of which slot, channel, module, output, port or plug is at fault: nothing where the fault is of no
 * such kind, or where the part itself says it. Refuses (`which-one`) where nobody said it nor left it open.
 */
export function whichOne(
  { fault, part, which }: Asked,
  tracing: Pick<TracingDoor, 'fault'>,
): { readonly which?: WhichOfSeveral } | { readonly refusal: Refusal } {
  const of = tracing.fault(fault)?.oneOf ?? null;
  if (of === null || (of === 'module' && part !== null)) return {};
  return which === undefined ? { refusal: { refused: 'which-one', of, fault } } : { which: { of, id: which } };
}
