import { z } from 'zod';
import { personal } from '../../journal/personal.ts';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { leavers, nobodyWouldKeepIt } from '../people/leavers.ts';
import { zStaff } from './settingFields.ts';

/** Who works here. Whoever does not any more loses PIN and badge; one who keeps the shop and has a PIN must stay. */
export const changeStaff = shopCommand(
  'change-staff',
  z.strictObject({ staff: zStaff }),
  () => ({ people: true }),
  (view, { staff }) => {
    if (!view.shop.settings) return refuse('shop-not-set-up');
    const refusal = nobodyWouldKeepIt(view.people, staff);
    if (refusal) return { ok: false, refusal };
    return accept(
      { stream: 'shop', kind: 'staff-changed', body: { staff: personal('staff', 'shop', staff) } },
      ...leavers(view.people, staff),
    );
  },
);
