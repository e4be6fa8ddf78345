import { z } from 'zod';
import { personal } from '../../journal/personal.ts';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zSettings, zStaff } from './settingFields.ts';

/** Sets the shop up: once, before anything else. */
export const openShop = shopCommand(
  'open-shop',
  z.strictObject({ settings: zSettings, staff: zStaff }),
  () => ({}),
  (view, { settings, staff }) => {
    if (view.shop.settings) return refuse('shop-set-up-already', { name: view.shop.settings.name });
    return accept({
      stream: 'shop',
      kind: 'shop-opened',
      body: { settings, staff: personal('staff', 'shop', staff) },
    });
  },
);
