import type { Notice } from '../../core/contract/standing.ts';
import type { OpenRefusal } from './openRefusal.ts';

/** How the shop stands: why it may only be read, if so, and what else is to be known. */
export type ShopStanding = { readonly onlyRead: OpenRefusal | null; readonly notices: readonly Notice[] };

/** Keeps what is to be known, the newest of each kind. */
export class StandingKept {
  readonly onlyRead: OpenRefusal | null;
  readonly #notices = new Map<Notice['notice'], Notice>();

  constructor(onlyRead: OpenRefusal | null) {
    this.onlyRead = onlyRead;
  }

  say(notice: Notice): void {
    this.#notices.set(notice.notice, notice);
  }

  now(): ShopStanding {
    return { onlyRead: this.onlyRead, notices: [...this.#notices.values()] };
  }
}
