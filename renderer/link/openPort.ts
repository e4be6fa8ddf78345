// The same words as in the preload, which loads no other file.
const PORT = 'knowngood:port';
const PORT_WANTED = 'knowngood:port-wanted';

/** Asks the app's main process, through the preload, for a port of this window's own to the service. */
export function openPort(): Promise<MessagePort> {
  return new Promise((resolve) => {
    const hear = ({ source, origin, data, ports: [port] }: MessageEvent) => {
      if (source !== window || origin !== location.origin || data !== PORT || !port) return;
      window.removeEventListener('message', hear);
      resolve(port);
    };
    window.addEventListener('message', hear);
    window.postMessage(PORT_WANTED, location.origin);
  });
}
