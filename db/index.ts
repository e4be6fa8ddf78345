/** What the service may use of the database. */

export type { BackupRefusal } from './backup/backupRefusal.ts';
export { checkBackup } from './backup/checkBackup.ts';
export { makeBackup } from './backup/makeBackup.ts';
export { openElsewhere } from './backup/openElsewhere.ts';
export { restoreBackup } from './backup/restore.ts';
export { needsMigration, shopIdIn } from './backup/shopImages.ts';
export type { Opener } from './backup/tryOut.ts';
export { isBlobName } from './blobs/blobName.ts';
export { checkPhotograph } from './blobs/checkPhotograph.ts';
export type { JournalFinding } from './journal/finding.ts';
export type { Reader } from './journal/reader.ts';
export { fileLog } from './log/fileLog.ts';
export type { TagHolder } from './projections/tables.ts';
export { type ClosedRow, closedRows, closedSoFar, ordersTook } from './reads/closed.ts';
export {
  endedEnquiries,
  jobNow,
  jobsWithOrders,
  jobThatHas,
  keptStays,
  latestJobsNow,
  newestJobOf,
  openEnquiries,
  openJobs,
  paperOf,
  papersNumbered,
  shopPartsHere,
  staysOf,
  streamOfTag,
  streamOfVoidTag,
  tagsInUse,
} from './reads/lists.ts';
export { jobsOfOwner, ownersGoneBefore } from './reads/owners.ts';
export { fileWallet } from './seal/wallets/fileWallet.ts';
/** @public Beside the file, for a shop without a window. */
export { passphraseWallet } from './seal/wallets/passphraseWallet.ts';
export { goOnWithWhatIsHere } from './shop/goOn.ts';
export { type OpenRefusal, onlyRead, refusalFromError } from './shop/openRefusal.ts';
export { isOpenRefusal, openShop } from './shop/openShop.ts';
export { openToRead } from './shop/openToRead.ts';
export type { Executed, NotExecuted, OpenShop } from './shop/shop.ts';
export { type FolderVerdict, verifyFolder } from './shop/verifyFolder.ts';
