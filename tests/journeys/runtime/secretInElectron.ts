import { givesHash, hashSecret } from '../../../electron/service/people/secretHash.ts';

/**
 * Hashes a PIN where the product does, in a utility process, and says what came of it. The other PIN and the hash that was
 * made elsewhere come as arguments.
 */
const [pin = '', other = '', elsewhere = ''] = process.argv.slice(2);

async function run(): Promise<void> {
  const own = await hashSecret(pin);
  process.parentPort.postMessage({
    electron: process.versions.electron ?? null,
    own,
    givesOwn: await givesHash(pin, own),
    otherGivesOwn: await givesHash(other, own),
    givesElsewhere: await givesHash(pin, elsewhere),
    otherGivesElsewhere: await givesHash(other, elsewhere),
  });
}

void run();
