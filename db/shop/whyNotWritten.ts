import { randomBytes } from 'node:crypto';
import { commandId, staffId } from '../../core/ids.ts';
import type { Draft } from '../../core/journal/entry.ts';
import type { Purpose } from '../../core/journal/personal.ts';
import type { Written } from '../../core/journal/written.ts';
import type { Refusal } from '../../core/refusal.ts';
import { append } from '../journal/append.ts';
import { markSealedTexts } from '../journal/markSealedTexts.ts';
import { whyNotAppended } from '../journal/whyNotAppended.ts';
import { applyEntries } from '../projections/apply.ts';
import { OnlyOneError } from '../projections/writer.ts';
import { keyIdOf } from '../seal/keyId.ts';
import { sealBody } from '../seal/sealedBody.ts';
import type { CommandPlace } from './runCommand.ts';

/** No key that is kept gets so far. */
const NOBODYS = 1_000_000_000;

type Place = Pick<CommandPlace, 'db' | 'branch' | 'openReader' | 'queue' | 'projections' | 'tools'>;

/**
 * Why entries would not be written, as a command that decided them would be told: they are appended and every read table
 * is changed by them, in a transaction that is taken back. No key is made for what is personal in them: it is sealed
 * under one that nobody keeps. Null where they would be written.
 */
export function whyNotWritten(place: Place, drafts: readonly Draft[], written: Written): Promise<Refusal | null> {
  return place.queue(async () => {
    const now = await place.openReader();
    const refusal = await whyNotAppended(now, drafts, written);
    if (refusal) return refusal;
    const marked = await markSealedTexts(now, drafts, written);
    const key = randomBytes(32);
    const thrownAway = (owner: string, purpose: Purpose) => ({ id: keyIdOf(owner, purpose, NOBODYS), key });
    const sealed = marked.map((draft) => ({ ...draft, body: sealBody(draft.body, thrownAway) }));
    const stamp = {
      branch: place.branch,
      at: written.at,
      by: staffId(written.by),
      device: '',
      command: commandId('preview'),
    };
    try {
      await place.db.transaction().execute(async (tx) => {
        await applyEntries(tx, stamp.branch, place.projections, await append(tx, stamp, sealed), place.tools);
        throw new TakenBack();
      });
    } catch (error) {
      if (error instanceof OnlyOneError) return error.refusal;
      if (!(error instanceof TakenBack)) throw error;
    }
    return null;
  });
}

/** Ends a transaction of which nothing is kept. */
class TakenBack extends Error {}
