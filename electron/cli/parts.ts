import cliWords from '../../assets/words/en/cli.json' with { type: 'json' };
import wallWords from '../../assets/words/en/wall.json' with { type: 'json' };
import type { OutRow, PathStay } from '../../core/contract/custodySheets.ts';
import type { Place } from '../../core/custody/place.ts';
import { placeFacts } from '../../core/custody/readouts/placeFacts.ts';
import { formatTag, parseTag } from '../../core/custody/tag.ts';
import { idIn, isStreamOf } from '../../core/entries/subjects.ts';
import type { MachineId } from '../../core/ids.ts';
import { fill } from '../../core/text/wordsFor.ts';
import { epochMs } from '../../core/time.ts';
import { type Reader, streamOfTag } from '../../db/index.ts';
import { outOfOurs, partPath, thenAndNow } from '../service/desk/sheets/custodyReads.ts';
import type { CliCommand, Io } from './command.ts';
import { readOptions } from './options.ts';
import { withShop } from './withShop.ts';

const words = cliWords.parts;
const placeWords: Readonly<Record<string, string>> = wallWords.is;

/** `knowngood parts where|path|inside TAG`, `knowngood parts out`: what the ledger answers at once. */
export const parts: CliCommand = {
  name: 'parts',
  help: words.help,
  run: async (args, io) => {
    const asked = readOptions(args, ['data', 'wallet']);
    if ('wrong' in asked) {
      io.err(asked.wrong);
      return 2;
    }
    const [what = '', text = '', ...more] = asked.rest;
    const byTag = ['where', 'path', 'inside'].includes(what);
    if ((!byTag && what !== 'out') || (byTag ? text === '' : text !== '') || more.length > 0) {
      io.err(words.which);
      return 2;
    }
    const tag = byTag ? parseTag(text) : undefined;
    if (byTag && !tag) {
      io.err(fill(words['no-tag'], { tag: text }));
      return 2;
    }
    return withShop(asked.options, io, async ({ shop, state }) => {
      const read = await shop.read();
      const at = epochMs(Date.now());
      const day = dayIn(state.settings?.locale ?? 'en', state.settings?.zone ?? 'UTC');
      if (!tag) {
        for (const row of await outOfOurs(read, at)) io.out(outLine(row, day));
        return 0;
      }
      const stream = (await streamOfTag(read, tag)) ?? 'shop';
      if (what === 'inside' && isStreamOf('machine', stream)) {
        await inside(read, idIn(stream), io);
        return 0;
      }
      if (what !== 'inside' && isStreamOf('part', stream)) {
        const path = await partPath(read, idIn(stream), at);
        for (const stay of what === 'path' ? path : path.slice(-1)) io.out(stayLine(stay, day));
        return 0;
      }
      io.err(fill(words['tag-unknown'], { tag: formatTag(tag) }));
      return 2;
    });
  },
};

const dayIn = (locale: string, timeZone: string) => (at: number) =>
  new Date(at).toLocaleString(locale, { dateStyle: 'medium', timeStyle: 'short', timeZone });

function placeText(place: Place, holder: string | null): string {
  const { says, facts } = placeFacts(place, holder);
  return fill(placeWords[says] ?? says, facts);
}

const forWhom = (called: string | null) => (called === null ? '' : fill(words.for, { called }));

const stayLine = ({ place, holder, since, called, by }: PathStay, day: (at: number) => string) =>
  fill(words.stay, { day: day(since), place: placeText(place, holder), for: forWhom(called), by });

const outLine = (row: OutRow, day: (at: number) => string) =>
  fill(words.out, {
    tag: row.tag === null ? '–' : formatTag(row.tag),
    name: row.name,
    place: placeText(row.is, row.holder),
    for: forWhom(row.called),
    day: day(row.since),
    by: row.by,
    back: row.returnBy === null ? '' : fill(row.overdue ? words.overdue : words.back, { day: day(row.returnBy) }),
  });

async function inside(read: Reader, machine: MachineId, io: Io): Promise<void> {
  const found = await thenAndNow(read, machine, epochMs(Date.now()));
  for (const { slot, came, now, same } of found?.slots ?? []) {
    const whose = now ? fill(words.whose[now.whose], { name: now.name }) : words.empty;
    const was = came
      ? fill(words.was, { name: came.name, place: placeText(came.is, found?.called ?? null) })
      : words['was-empty'];
    io.out(same ? fill(words.same, { slot, now: whose }) : fill(words.other, { slot, now: whose, was }));
  }
}
