import { z } from 'zod';
import { personal } from '../../journal/personal.ts';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zStaff } from './settingFields.ts';

/** Who works here. */
export const changeStaff = shopCommand(
  'change-staff',
  z.strictObject({ staff: zStaff }),
  () => ({}),
  (view, { staff }) =>
    view.shop.settings
      ? accept({ stream: 'shop', kind: 'staff-changed', body: { staff: personal('staff', 'shop', staff) } })
      : refuse('shop-not-set-up'),
);
