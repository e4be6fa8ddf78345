import { BrowserWindow } from 'electron';
import { shellWords } from '../words/shellWords.ts';
import { isOurs } from './ourPage.ts';

/** Opens a window that shows an address of ours and can neither open others nor leave our page. */
export function openWindow(address: string, preload: string): BrowserWindow {
  const window = new BrowserWindow({
    title: shellWords.name,
    width: 1280,
    height: 800,
    minWidth: 640,
    minHeight: 480,
    autoHideMenuBar: true,
    show: false,
    webPreferences: {
      preload,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webSecurity: true,
      webviewTag: false,
      spellcheck: false,
    },
  });
  const { webContents } = window;
  webContents.setWindowOpenHandler(() => ({ action: 'deny' }));
  webContents.on('will-navigate', (event) => {
    if (!isOurs(event.url)) event.preventDefault();
  });
  webContents.on('will-redirect', (event) => {
    if (!isOurs(event.url)) event.preventDefault();
  });
  webContents.on('will-frame-navigate', (event) => {
    if (!isOurs(event.url)) event.preventDefault();
  });
  webContents.on('will-attach-webview', (event) => event.preventDefault());
  window.once('ready-to-show', () => window.show());
  void window.loadURL(address);
  return window;
}

/** Shows another page of ours in a window, after the one that is just being loaded. */
export function showInstead({ webContents }: BrowserWindow, address: string): void {
  const show = () => void webContents.loadURL(address);
  if (webContents.isLoadingMainFrame()) webContents.once('did-stop-loading', show);
  else show();
}
