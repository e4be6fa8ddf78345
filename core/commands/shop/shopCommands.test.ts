import { expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import { openShop } from './openShop.ts';

/** Does a shop open whose amounts are in this currency? */
const opensIn = (currency: string) =>
  openShop.input.safeParse({ settings: { ...shopOf.settings, currency }, staff: shopOf.staff }).success;

// ISO 4217: XAU (gold) and XTS (for tests) have no minor unit; DEM is no longer active.
it.each(['XAU', 'XTS', 'DEM', 'ABC', 'gbp'])('a shop cannot write its amounts in %s', (currency) => {
  expect(opensIn('GBP')).toBe(true);
  expect(opensIn(currency)).toBe(false);
});
