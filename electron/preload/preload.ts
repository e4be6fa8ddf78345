import { ipcRenderer } from 'electron';

// The same words as in the main process and the page; a sandboxed preload is one file and loads no other.
const PORT = 'knowngood:port';
const PORT_WANTED = 'knowngood:port-wanted';
const LOCKED = 'knowngood:locked';
const OURS = 'app://knowngood';

// Nothing is put into the page's world: the page asks by a message, and gets a port, which is all it can have.
window.addEventListener('message', ({ source, origin, data }) => {
  if (source === window && origin === OURS && location.origin === OURS && data === PORT_WANTED) ipcRenderer.send(PORT);
});
ipcRenderer.on(PORT, ({ ports }) => window.postMessage(PORT, OURS, [...ports]));
ipcRenderer.on(LOCKED, (_, at: number) => window.postMessage([LOCKED, at], OURS));
