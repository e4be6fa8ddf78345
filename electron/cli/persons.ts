import { mkdirSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import words from '../../assets/words/en/persons.json' with { type: 'json' };
import refusals from '../../assets/words/en/refusals.json' with { type: 'json' };
import { dayOf } from '../../core/calendar.ts';
import type { PersonSheet } from '../../core/contract/personsSheet.ts';
import { type OwnerId, ownerId } from '../../core/ids.ts';
import { zoneOf } from '../../core/job/shop.ts';
import { fill, wordsFor } from '../../core/text/wordsFor.ts';
import { epochMs } from '../../core/time.ts';
import { type OpenShop, shopIdIn } from '../../db/index.ts';
import { doBackupTask } from '../service/backups/backupTask.ts';
import { openBackups } from '../service/backups/openBackups.ts';
import { appFolder, defaultDataFolder, walletOf } from '../service/dataFolder.ts';
import { carryOut } from '../service/desk/carryOut.ts';
import { find } from '../service/desk/sheets/find.ts';
import { openEngine } from '../service/openEngine.ts';
import { openTools } from '../service/openTools.ts';
import { mayAskLocally } from '../service/people/mayAsk.ts';
import { personExport } from '../service/persons/personExport.ts';
import { personSheet, personsDue } from '../service/persons/personSheet.ts';
import { LISTED_DAYS } from '../service/persons/retention.ts';
import type { CliCommand, Io } from './command.ts';
import { readOptions } from './options.ts';
import { withShop } from './withShop.ts';

/** Said in full, as nothing brings it back. */
const YES = 'for-ever';

type Asked = Readonly<Record<'data' | 'out' | 'by' | 'yes', string | undefined>>;

/** `knowngood person`: what is held of an owner, as a whole to hand out, and its erasure. */
export const person: CliCommand = {
  name: 'person',
  help: words.help,
  run: async (args, io) => {
    const asked = readOptions(args, ['data', 'out', 'by', 'yes']);
    const [deed, ...rest] = 'wrong' in asked ? [] : asked.rest;
    const options = 'wrong' in asked ? null : asked.options;
    const text = rest.join(' ');
    const needsNone = deed === 'due';
    if (!options || !isDeed(deed) || (text === '') !== needsNone) {
      io.err('wrong' in asked ? asked.wrong : words.which);
      return 2;
    }
    return withShop(options, io, ({ shop }) => DEEDS[deed](shop, text, options, io), { writes: deed === 'erase' });
  },
};

const now = () => epochMs(Date.now());

async function found(shop: OpenShop, text: string, _asked: Asked, io: Io): Promise<number> {
  const read = await shop.read();
  const owners = new Set<OwnerId>();
  for (const { job } of await find(read, text, now())) {
    const owner = job === null ? null : (await read.load('job', job))?.owner;
    if (owner) owners.add(owner);
  }
  for (const kind of ['phone', 'mail'] as const)
    for (const stream of await shop.recognise(kind, text))
      if (stream.startsWith('owner:')) owners.add(ownerId(stream.slice('owner:'.length)));
  for (const owner of owners) {
    const sheet = await personSheet(read, shop, owner, now());
    if (sheet) io.out(fill(words.row, { ...sheet, name: sheet.name ?? words.erased }));
  }
  if (owners.size === 0) io.err(words.nobody);
  return owners.size > 0 ? 0 : 2;
}

async function listed(shop: OpenShop, _text: string, _asked: Asked, io: Io): Promise<number> {
  const read = await shop.read();
  const due = await personsDue(read, shop, now(), LISTED_DAYS);
  const zone = zoneOf(await read.load('shop'));
  io.out(fill(words.due, { count: due.length, days: LISTED_DAYS }));
  for (const sheet of due) tell(sheet, zone, io);
  return 0;
}

async function exported(shop: OpenShop, text: string, { out }: Asked, io: Io): Promise<number> {
  if (out === undefined) return saying(io, words.whereTo);
  if (statSync(out, { throwIfNoEntry: false }) && (!statSync(out).isDirectory() || readdirSync(out).length > 0))
    return saying(io, fill(words.notEmpty, { path: out }));
  const made = await personExport(shop, await shop.read(), ownerId(text), now());
  if (!made) return saying(io, words.nobody);
  mkdirSync(out, { recursive: true, mode: 0o700 });
  writeFileSync(join(out, 'person.json'), `${JSON.stringify(made.all, null, 2)}\n`, { mode: 0o600 });
  for (const { name, bytes } of made.files) writeFileSync(join(out, name), bytes, { mode: 0o600 });
  io.out(fill(words.exported, { path: out, files: made.files.length }));
  return 0;
}

async function erased(shop: OpenShop, text: string, { data, by, yes }: Asked, io: Io): Promise<number> {
  const read = await shop.read();
  const sheet = await personSheet(read, shop, ownerId(text), now());
  if (!sheet) return saying(io, words.nobody);
  tell(sheet, zoneOf(await read.load('shop')), io);
  if (yes !== YES || by === undefined) {
    io.out(fill(words.ask, { yes: YES }));
    return 1;
  }
  const engine = openEngine();
  try {
    const tools = openTools(engine, () => shop.lastSealedHead()?.short ?? null);
    const input = { owner: ownerId(text), asked: true };
    const asked = { command: `person-${crypto.randomUUID()}`, by, name: 'eraseOwner', input } as const;
    const done = await carryOut(shop, tools, 'command-line', asked, mayAskLocally);
    if (!done.ok) {
      const { says, unchanged, next } = wordsFor(done.refusal, refusals);
      return saying(io, `${says} ${unchanged} ${next}`);
    }
  } finally {
    await engine.end();
  }
  io.out(words.done);
  for (const path of await keyPartsReplaced(data ?? defaultDataFolder())) io.out(fill(words.missed, { path }));
  return 0;
}

/** Replaces every key part of the shop's backups that can be reached. @returns Folders that could not be. */
function keyPartsReplaced(folder: string): Promise<readonly string[]> {
  return openBackups({
    folder,
    wallet: walletOf(folder),
    app: appFolder(),
    shopId: shopIdIn(folder) ?? '',
    head: async () => 0,
    zone: async () => 'UTC',
    clock: Date.now,
    does: doBackupTask,
    tellDefect: () => undefined,
  }).afterErasure();
}

const DEEDS = { find: found, due: listed, export: exported, erase: erased };
const isDeed = (name: string | undefined): name is keyof typeof DEEDS =>
  name !== undefined && Object.hasOwn(DEEDS, name);

function tell(sheet: PersonSheet, zone: string, io: Io): void {
  io.out(fill(words.row, { ...sheet, name: sheet.name ?? words.erased }));
  for (const job of sheet.open) io.out(fill(words.open, { job }));
  if (sheet.goes.length > 0) io.out(fill(words.goes, { what: sheet.goes.map((purpose) => words.purposes[purpose]) }));
  for (const { purpose, until } of sheet.stays)
    io.out(fill(words.stays, { what: words.purposes[purpose], until: dayOf(until, zone) }));
}

function saying(io: Io, says: string): number {
  io.err(says);
  return 2;
}
