import type { Owner } from '../../../../core/approval/owner.ts';
import { freshSheet, type OwnerSheet } from '../../taking-in/sheet.ts';

/** An owner as they stand on the record, in the fields in which they were written. */
export function ownerSheet({ name, reach, address, kind, mayCollect }: Owner): OwnerSheet {
  return {
    ...freshSheet().owner,
    name: name.value ?? '',
    phone: reach.value?.phone ?? '',
    mail: reach.value?.mail ?? '',
    address: address?.value ?? '',
    kind: kind.is,
    mayCollect: (mayCollect.value ?? []).join(', '),
    ...(kind.is === 'minor' && { guardian: kind.guardian.value ?? '' }),
    ...(kind.is === 'for-someone-else' && { machineOf: kind.machineOf.value ?? '' }),
    ...(kind.is === 'company' && {
      orderNumber: kind.orderNumber ?? '',
      approves: kind.approves?.value ?? '',
      approvesUpToMinor: kind.approvesUpToMinor,
      alsoApprove: kind.alsoApprove?.value ?? [],
    }),
  };
}
