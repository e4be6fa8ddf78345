import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type ElectronApplication, type Page } from '@playwright/test';
import { asRoot, chromiumProgram, root, serviceNode } from './house.ts';
import { launchElectron } from './launchElectron.ts';
import { serveForTest } from './serveForTest.ts';

/** The app as a journey meets it, the same wherever it runs. */
export type OpenedApp = {
  readonly where: 'electron' | 'browser';
  readonly page: Page;
  /** The shop's data folder. */
  readonly data: string;
  /** What the app keeps of its own: settings, wallet, log. Kept apart, so that no journey meets another's. */
  readonly config: string;
  /** What the page complained of on its console: errors, refused by the content policy or thrown. */
  readonly complaints: readonly string[];
  readonly context: BrowserContext;
  /** There in the browser only: the address it was opened by, with its one-time token. */
  readonly address?: string;
  /** There in Electron only. */
  readonly electron?: ElectronApplication;
  /** Ends the app in order; its folders stay. */
  readonly end: () => Promise<void>;
  /** Ends the app in order, and deletes the folders that were made for it. */
  readonly close: () => Promise<void>;
};

export type Opening = {
  /** A data folder of one's own, kept after closing; else a fresh one, deleted then. */
  readonly data?: string;
  /** The folder of the app's own things that goes with it. */
  readonly config?: string;
  /** Further switches for Chromium or Electron. */
  readonly switches?: readonly string[];
  readonly viewport?: { readonly width: number; readonly height: number };
};

/** How long one press or one look may take on a slow machine before a journey gives up and says where it stood. */
const ACTION_MS = 20_000;

/** Opens the real Electron window with its service in a forked Node. Needs a display (xvfb-run). */
export async function openInElectron(opening: Opening = {}): Promise<OpenedApp> {
  const place = placeFor(opening);
  const electron = await launchElectron(root, [...(opening.switches ?? []), '--data', place.data], {
    KNOWNGOOD_SERVICE_NODE: serviceNode,
    XDG_CONFIG_HOME: place.config,
  });
  const page = await electron.firstWindow();
  page.setDefaultTimeout(ACTION_MS);
  await withoutPrinter(page);
  const complaints = listen(page);
  if (opening.viewport) await page.setViewportSize(opening.viewport);
  const end = once(() => electron.close());
  const close = () => end().then(place.remove);
  return {
    where: 'electron',
    page,
    data: place.data,
    config: place.config,
    complaints,
    context: electron.context(),
    electron,
    end,
    close,
  };
}

/** Opens the same screens in Debian's browser over loopback. */
export async function openInBrowser(opening: Opening = {}): Promise<OpenedApp> {
  const place = placeFor(opening);
  const served = await serveForTest(place);
  const args = [...(asRoot ? ['--no-sandbox'] : []), ...(opening.switches ?? [])];
  const browser = await chromium.launch({ executablePath: chromiumProgram(), args });
  const context = await browser.newContext({ viewport: opening.viewport ?? { width: 1280, height: 800 } });
  const page = await context.newPage();
  page.setDefaultTimeout(ACTION_MS);
  const complaints = listen(page);
  await page.goto(served.address);
  const end = once(async () => {
    await browser.close();
    await served.end();
  });
  const close = () => end().then(place.remove);
  return {
    where: 'browser',
    page,
    data: place.data,
    config: place.config,
    complaints,
    context,
    address: served.address,
    end,
    close,
  };
}

/** The system's own dialog for printing is nothing a journey can press, and would hold the window: printing does nothing. */
async function withoutPrinter(page: Page): Promise<void> {
  const nothing = () => {
    window.print = () => undefined;
  };
  await page.addInitScript(nothing);
  await page.evaluate(nothing);
}

function once(work: () => Promise<void>): () => Promise<void> {
  let done: Promise<void> | undefined;
  return () => {
    done ??= work();
    return done;
  };
}

function placeFor({ data, config }: Opening) {
  const folder = mkdtempSync(join(tmpdir(), 'knowngood-journey-'));
  const own = join(folder, 'shop');
  if (!data) mkdirSync(own);
  return {
    data: data ?? own,
    config: config ?? join(folder, 'config'),
    remove: () => rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 }),
  };
}

function listen(page: Page): string[] {
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error)));
  return complaints;
}
