import { accept, aShopFolder, asked, edition } from '../builders/shopFolder.ts';

/**
 * Opens the shop in the folder given, and says each thing that is acknowledged on standard output. Between two lines the
 * test's kill may fall. `READY` comes before the first call to the disk that counts.
 */
const [folder, commands = '0'] = process.argv.slice(2);
if (!folder) throw new Error('No folder given');
const say = (line: string) => process.stdout.write(`${line}\n`);

const shop = await aShopFolder(folder).opened();
say('open');
for (let turn = 1; turn <= Number(commands); turn++) {
  const done = await shop.runCommand(asked({ command: `c${turn}` }), () => accept(edition(`note ${turn}`)));
  say(done.ok ? `done ${done.seq}` : `refused ${done.refusal.refused}`);
}
await shop.close();
say('closed');
