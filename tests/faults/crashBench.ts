import { randomUUID } from 'node:crypto';
import { personal } from '../../core/journal/personal.ts';
import { accept, aShopFolder, asked, draft, write } from '../builders/shopFolder.ts';
import { BEGINNINGS, ownerOf } from './crashStreams.ts';

/**
 * A bench that works until it is killed: commands of several entries, sealed names, photographs and heads, as fast as
 * they go. Says what each command was once it is acknowledged.
 */
const folder = process.argv[2];
if (!folder) throw new Error('No folder given');
const say = (message: object) => void process.send?.(message);

const place = aShopFolder(folder);
const shop = await place.opened();
if ((await shop.read()).head === 0) await write(shop, ...BEGINNINGS);
say({ open: true });

async function work(bench: number): Promise<void> {
  for (let turn = 0; ; turn++) {
    const command = randomUUID();
    const owner = ownerOf(bench, turn);
    const blob =
      turn % 5 === 0
        ? await shop.blobs.put(Buffer.from(`photograph ${command}`), { of: owner, purpose: 'photographs' })
        : null;
    const done = await shop.runCommand(asked({ command, asked: { bench, turn } }), async (read) => {
      const before = await read.version(`job:${bench}`);
      return accept(
        draft(`job:${bench}`, 'photographed', { of: `${turn}/${before}`, blob: blob ?? '' }),
        draft('shop', 'model-gone-back', { from: command }),
        draft(`owner:${owner}`, 'owner-changed', { name: personal('contact', owner, `Wilhelmina ${turn}`) }),
      );
    });
    if (!done.ok) throw new Error(`Refused: ${JSON.stringify(done.refusal)}`);
    say({ done: command, seq: done.seq, bench, turn, owner, blob });
    if (turn % 7 === 0) await shop.sealHeads();
  }
}

await Promise.all([1, 2, 3].map(work));
