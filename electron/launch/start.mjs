import { appWindow } from './appWindow.mjs';
import { chromiumBinary } from './chromium.mjs';
import { asRoot, hasDisplay } from './display.mjs';
import { electronBinary } from './electronBinary.mjs';
import { root } from './house.mjs';
import { runTool } from './runTool.mjs';
import { launch } from './SetUpError.mjs';
import { startService } from './service.mjs';
import { say, setUp } from './setUp.mjs';

/** A window that ends by itself this soon, and not well, never showed anything. */
const STILLBORN_MS = 10_000;
const args = process.argv.slice(2);
const sandbox = asRoot ? ['--no-sandbox'] : [];

/** Opens the app in Electron; `undefined` when Electron could not be had or did not come up. */
async function inElectron(house) {
  const electron = await electronBinary(house, say);
  if (!electron) {
    say('Electron could not be fetched here.');
    return undefined;
  }
  say('Opening Knowngood in its own window (Electron).');
  if (asRoot) say('Running as root: Chromium’s sandbox is off. Use an ordinary account for daily work.');
  const since = Date.now();
  const { code, failed } = await runTool(electron, [root, ...sandbox, ...args], { env: house.env });
  if (!failed && (code === 0 || Date.now() - since > STILLBORN_MS)) return code;
  say(`Electron ended at once (code ${code}).`);
  return undefined;
}

/** Whether a browser showed the address until its window was closed. */
async function inChromium(browser, address, env) {
  const since = Date.now();
  const code = await appWindow(browser, address, { env, args: sandbox });
  return code === 0 || Date.now() - since > STILLBORN_MS;
}

/** Serves the same screens on loopback and shows them in a browser window, else says where they are. */
async function onLoopback(house) {
  const { address, ended, stop } = await startService(house, args);
  const browser = hasDisplay() ? chromiumBinary() : undefined;
  if (browser) {
    say(`Opening the same screens in a browser window (${browser}); closing it ends Knowngood.`);
    const shown = await Promise.race([inChromium(browser, address, house.env), ended.then(() => true)]);
    if (shown) return (await stop()).code === 0 ? 0 : 1;
    say('The browser window did not come up.');
  } else {
    say(hasDisplay() ? 'No browser of the Chromium family was found.' : 'There is no display here.');
  }
  say('Knowngood is served on this computer only. Open this address in a browser; Ctrl+C ends it.');
  process.stdout.write(`${address}\n`);
  return (await ended).code;
}

await launch(async () => {
  const house = await setUp({ build: true });
  const fromElectron = hasDisplay() ? await inElectron(house) : undefined;
  return fromElectron ?? (await onLoopback(house));
});
