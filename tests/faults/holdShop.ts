import { aShopFolder } from '../builders/shopFolder.ts';

/** Holds the shop's folder given on the command line until it is killed. */
const folder = process.argv[2];
if (!folder) throw new Error('No folder given');
await aShopFolder(folder).opened();
process.send?.('open');
setInterval(() => {}, 60_000);
