import { ipcMain, MessageChannelMain, type MessagePortMain } from 'electron';
import { isOurs } from './ourPage.ts';

/** The one channel between a window's preload and the main process. */
export const PORT_CHANNEL = 'knowngood:port';

/** Gives each window of ours that asks a port of its own to the service; whoever else asks is not answered. */
export function brokerPorts(connect: (port: MessagePortMain) => void): void {
  ipcMain.on(PORT_CHANNEL, ({ sender, senderFrame }) => {
    if (!senderFrame || senderFrame.parent || !isOurs(senderFrame.url)) return;
    const { port1, port2 } = new MessageChannelMain();
    connect(port1);
    sender.postMessage(PORT_CHANNEL, null, [port2]);
  });
}
