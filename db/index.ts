/** What the service may use of the database. */

export type { BlobName } from './blobs/blobName.ts';
export { isBlobName } from './blobs/blobName.ts';
export { checkPhotograph } from './blobs/checkPhotograph.ts';
export type { Change } from './journal/changes.ts';
export type { Reader, ReadQueries } from './journal/reader.ts';
export type { Finding, Verdict } from './journal/verify.ts';
export { fileLog } from './log/fileLog.ts';
export { errorFacts, type Log, type LogFacts, word } from './log/log.ts';
export type { ReadTables } from './projections/tables.ts';
export {
  jobThatHas,
  latestJobs,
  newestJobOf,
  openEnquiries,
  openJobs,
  paperOf,
  partsHere,
  streamOfTag,
} from './reads/lists.ts';
export type { Erasure, PurposeDecision } from './seal/eraseOwner.ts';
export type { SealedHead } from './seal/heads.ts';
export { fileWallet } from './seal/wallets/fileWallet.ts';
export { passphraseWallet } from './seal/wallets/passphraseWallet.ts';
export type { Wallet, WalletRefusal } from './seal/wallets/wallet.ts';
export type { OpenRefusal } from './shop/openRefusal.ts';
export { isOpenRefusal, type OpenOptions, openShop } from './shop/openShop.ts';
export type { Asked, Decide, Done, NotDone, Shop } from './shop/shop.ts';
