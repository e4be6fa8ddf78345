import type { TracingDoor } from '../bench/tracingDoor.ts';
import type { StaffId } from '../ids.ts';
import type { ShopSettings } from '../job/shop.ts';
import type { Setting } from '../papers/setting.ts';
import type { EpochMs } from '../time.ts';
import type { JobWords } from './jobWords.ts';

/** What papers are worded with: who issues them and when, the last sealed head, words by language, the tracing engine. */
export type PaperTools = {
  readonly at: EpochMs;
  readonly by: StaffId;
  /** The last sealed head in short, as printed on papers; null before the first. */
  readonly lastHead: string | null;
  /** The shop's own id, as papers carry it. */
  readonly shopId?: string;
  /** The tracing engine with the shop's fault model. */
  readonly tracing: TracingDoor;
  /** How papers are worded for an owner's language, in a shop's place. */
  readonly paperSetting: (language: string, settings: ShopSettings) => Setting;
  /** Words that turn the journal's names into an owner's language. */
  readonly jobWords: (language: string) => JobWords;
  /** The owner has not said a limit yet: a sheet being written is shown without one. Nothing is issued so. */
  readonly limitOpen?: true;
};
