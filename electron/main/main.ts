import { join } from 'node:path';
import { app, BrowserWindow, powerMonitor, session } from 'electron';
import { askedFor } from '../service/askedFor.ts';
import type { StartRefusal } from '../service/backing.ts';
import { windowFolder } from '../service/dataFolder.ts';
import { announceScheme, serveScreens } from './appProtocol.ts';
import { cannotStartPage } from './cannotStartPage.ts';
import { forkedService } from './forkedService.ts';
import { keepService } from './keeper.ts';
import { setMenu } from './menu.ts';
import { CANNOT_START, OUR_PAGE } from './ourPage.ts';
import { ownArguments } from './ownArguments.ts';
import { grantOnlyTheCamera } from './permissions.ts';
import { brokerPorts } from './portBroker.ts';
import { tellOfLock } from './screenLock.ts';
import { utilityService } from './utilityService.ts';
import { openWindow, showInstead } from './window.ts';

const SERVICE = join(__dirname, 'service.mjs');
const PRELOAD = join(__dirname, 'preload.cjs');
const SCREENS = join(__dirname, 'ui');

/** A Node to run the service in instead of Electron's own; an installed app does not listen to it. */
const node = app.getAppPath().endsWith('.asar') ? undefined : process.env.KNOWNGOOD_SERVICE_NODE;

function run(data: string): void {
  announceScheme();
  // Together with --no-sandbox, as root needs it in tests, every child process would fail and the start hang.
  if (!app.commandLine.hasSwitch('no-sandbox')) app.enableSandbox();
  app.on('second-instance', () => {
    const [window] = BrowserWindow.getAllWindows();
    if (window?.isMinimized()) window.restore();
    window?.focus();
  });
  app.on('window-all-closed', () => app.quit());
  void app.whenReady().then(() => open(data));
}

function open(data: string): void {
  let failure: StartRefusal | undefined;
  setMenu();
  grantOnlyTheCamera(session.defaultSession);
  serveScreens(SCREENS, () => cannotStartPage(failure ?? { refused: 'unknown', path: data }));
  const args = ['--data', data];
  const service = keepService(
    () => (node ? forkedService(node, SERVICE, args) : utilityService(SERVICE, args)),
    (refusal) => {
      failure = { ...refusal, path: refusal.path || data };
      for (const window of BrowserWindow.getAllWindows()) showInstead(window, CANNOT_START);
    },
  );
  brokerPorts(service.connect);
  openWindow(OUR_PAGE, PRELOAD);
  tellOfLock(powerMonitor, () => BrowserWindow.getAllWindows(), Date.now);
  let ended = false;
  app.on('will-quit', (event) => {
    if (ended) return;
    event.preventDefault();
    void service.end().then(() => {
      ended = true;
      // Asked from within the event it would be overheard: a service that is gone already ends at once.
      setImmediate(() => app.quit());
    });
  });
}

const asked = askedFor(ownArguments(process.argv, app.getAppPath()));
if ('wrong' in asked) {
  process.stderr.write(`${asked.wrong}\n`);
  app.exit(2);
} else {
  app.setPath('userData', windowFolder(asked.data));
  if (app.requestSingleInstanceLock()) run(asked.data);
  else app.exit(0);
}
