import type { ElementHandle, Locator, Page } from '@playwright/test';
import { expect } from './runtime/journey.ts';

/** Someone who has a keyboard and nothing else: goes by Tab and arrows, and presses what has the focus. */
export type Keys = {
  /** Goes there stop by stop. */
  readonly reach: (target: Locator) => Promise<void>;
  /** Goes there and presses it. */
  readonly press: (target: Locator) => Promise<void>;
  /** Goes there and writes over what stands in it. */
  readonly write: (target: Locator, text: string) => Promise<void>;
  /** Stops whose look did not change by having the focus: nobody could have seen where they were. */
  readonly unseen: () => readonly string[];
};

const MOST_STOPS = 220;

/** What a stop looks like with the focus and after it; kept in the page, where elements can be compared. */
type Watched = Window & { keptStop?: { readonly at: Element; readonly look: string } };

export function byKeys(page: Page): Keys {
  const unseen: string[] = [];

  /**
   * Compares the stop that was left with its look while it had the focus, remembers the new one, and names the key that
   * leads on towards the target; null when the focus is there.
   */
  const look = (target: ElementHandle) =>
    target.evaluate((to) => {
      const SHOWS = ['outline', 'boxShadow', 'border', 'background', 'stroke', 'strokeWidth', 'fill', 'textDecoration'];
      const lookOf = (at: Element) =>
        [at, at.parentElement, at.parentElement?.parentElement]
          .map((one) => one && SHOWS.map((name) => getComputedStyle(one)[name as keyof CSSStyleDeclaration]).join('|'))
          .join('\n');
      const onwards = (at: Element | null) => {
        if (at === to) return null;
        const follows = at === null || (at.compareDocumentPosition(to) & Node.DOCUMENT_POSITION_PRECEDING) === 0;
        const inRow = at && (to as Element).closest('[role="toolbar"], [role="radiogroup"]')?.contains(at);
        if (inRow) return follows ? 'ArrowRight' : 'ArrowLeft';
        return follows ? 'Tab' : 'Shift+Tab';
      };
      const watched = window as Watched;
      const { keptStop } = watched;
      const at = document.activeElement;
      const blind = keptStop?.at.isConnected && keptStop.at !== at && lookOf(keptStop.at) === keptStop.look;
      if (at && at !== document.body) watched.keptStop = { at, look: lookOf(at) };
      else delete watched.keptStop;
      return {
        blind: blind ? keptStop.at.outerHTML.slice(0, 160) : null,
        gone: !to.isConnected,
        key: onwards(at),
      };
    });

  const reach = async (target: Locator) => {
    let handle = await found(target);
    for (let stops = 0; stops < MOST_STOPS; stops += 1) {
      const { blind, gone, key } = await look(handle);
      if (blind !== null) unseen.push(blind);
      if (gone) {
        handle = await found(target);
        continue;
      }
      if (key === null) return expect(target).toBeInViewport();
      await page.keyboard.press(key);
    }
    const stuck = await page.evaluate(() => document.activeElement?.outerHTML.slice(0, 200));
    throw new Error(`Not reached by ${MOST_STOPS} keys: ${target}; the focus stands at ${stuck}`);
  };

  return {
    reach,
    press: async (target) => {
      await reach(target);
      await page.keyboard.press('Space');
    },
    write: async (target, text) => {
      await reach(target);
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.type(text);
    },
    unseen: () => unseen,
  };
}

async function found(target: Locator): Promise<ElementHandle> {
  await target.waitFor();
  const handle = await target.elementHandle();
  if (handle === null) throw new Error(`Not there: ${target}`);
  return handle;
}
