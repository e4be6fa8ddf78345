import AxeBuilder from '@axe-core/playwright';
import type { OpenedApp } from './openApp.ts';

/** What axe finds wrong with the page as it stands: rule, weight and the elements. Empty when nothing is. */
export async function accessibilityFaults(app: OpenedApp): Promise<readonly string[]> {
  const axe = new AxeBuilder({ page: app.page });
  // The usual mode opens a page of its own to work in, which Electron refuses.
  if (app.where === 'electron') axe.setLegacyMode();
  const { violations } = await axe.analyze();
  return violations.map(
    ({ id, impact, nodes }) => `${id} (${impact}): ${nodes.map(({ target }) => target.join(' ')).join(', ')}`,
  );
}
