import { z } from 'zod';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zSettings } from './settingFields.ts';

/** Changes the shop's settings from now on; jobs taken in keep what was agreed then. */
export const changeShop = shopCommand(
  'change-shop',
  z.strictObject({ settings: zSettings }),
  () => ({}),
  (view, { settings }) =>
    view.shop.settings
      ? accept({ stream: 'shop', kind: 'shop-changed', body: { settings } })
      : refuse('shop-not-set-up'),
);
