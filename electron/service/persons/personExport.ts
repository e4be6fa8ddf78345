import { isStreamOf } from '../../../core/entries/subjects.ts';
import type { OwnerId } from '../../../core/ids.ts';
import type { Stream } from '../../../core/journal/entry.ts';
import type { EpochMs } from '../../../core/time.ts';
import { isBlobName, type OpenShop, type Reader } from '../../../db/index.ts';
import { loadView } from '../desk/loadView.ts';
import { asFarAsReadable } from '../desk/setApart.ts';
import { drawIssued, issuedPaper } from '../desk/sheets/papers.ts';

type ExportedEntry = { readonly seq: number; readonly at: string; readonly kind: string; readonly body: unknown };

/** All that is held of an owner, for machines: every entry about them, opened, by what it belongs to. */
export type PersonExport = {
  readonly form: 'knowngood-person-1';
  readonly made: string;
  readonly owner: OwnerId;
  readonly streams: readonly { readonly stream: string; readonly entries: readonly ExportedEntry[] }[];
  /** Files beside it: papers and pictures by their names. */
  readonly files: readonly string[];
};

export type ExportedFile = { readonly name: string; readonly bytes: Uint8Array };

/**
 * Everything that is held of an owner: machine-readable, and as papers, photographs and letters to be looked at; null for
 * nobody. Of a stream in which an entry cannot be read, whatever can be.
 */
export async function personExport(
  shop: OpenShop,
  read: Reader,
  owner: OwnerId,
  at: EpochMs,
): Promise<{ readonly all: PersonExport; readonly files: readonly ExportedFile[] } | null> {
  const readable = asFarAsReadable(read);
  const view = await loadView(readable, { owner, ownersJobs: true }, at);
  if (!view.owner) return null;
  const jobs = view.ownersJobs ?? [];
  const machines = new Set(jobs.map(({ machine }) => machine));
  const theirs = async (id: string) => {
    const { belongs } = (await readable.load('part', id)) ?? {};
    return belongs?.to === 'owner' && belongs.owner === owner;
  };
  const parts: string[] = [];
  for (const id of new Set(jobs.flatMap((job) => job.parts))) if (await theirs(id)) parts.push(id);
  const named: readonly Stream[] = [
    `owner:${owner}`,
    ...jobs.map(({ id }): Stream => `job:${id}`),
    ...[...machines].map((id): Stream => `machine:${id}`),
    ...parts.map((id): Stream => `part:${id}`),
  ];
  const streams = [];
  for (const stream of named) streams.push({ stream, entries: await entriesOf(read, stream) });
  const files = [...(await papersOf(read, jobs)), ...(await blobsOf(shop, JSON.stringify(streams)))];
  const all = {
    form: 'knowngood-person-1',
    made: new Date(at).toISOString(),
    owner,
    streams,
    files: files.map(({ name }) => name),
  } as const;
  return { all, files };
}

/** The files' bytes by their names, in base 64, where all has to be one file. */
export const contentsOf = (files: readonly ExportedFile[]): Readonly<Record<string, string>> =>
  Object.fromEntries(files.map(({ name, bytes }) => [name, Buffer.from(bytes).toString('base64')]));

const EXPORTED = ['owner', 'job', 'machine', 'part'] as const;

async function entriesOf(read: Reader, stream: Stream): Promise<readonly ExportedEntry[]> {
  for (const subject of EXPORTED) {
    if (!isStreamOf(subject, stream)) continue;
    const entries = await read.entries(stream);
    return entries.map(({ seq, at, kind, body }) => ({ seq, at: new Date(at).toISOString(), kind, body }));
  }
  return [];
}

/** The papers of these jobs that can still be read, as PDF. */
async function papersOf(
  read: Reader,
  jobs: readonly { readonly papers: readonly { readonly number: string }[] }[],
): Promise<readonly ExportedFile[]> {
  const files: ExportedFile[] = [];
  for (const { number } of jobs.flatMap(({ papers }) => papers)) {
    const paper = await issuedPaper(read, number);
    if (paper)
      files.push({ name: `${number.replace(/[^\w.-]/g, '_')}.pdf`, bytes: await drawIssued(paper, { copy: true }) });
  }
  return files;
}

/** Photographs and letters that these entries name. */
async function blobsOf(shop: OpenShop, text: string): Promise<readonly ExportedFile[]> {
  const files: ExportedFile[] = [];
  for (const name of new Set(text.match(/blob:[0-9a-f]{64}/g) ?? [])) {
    const bytes = isBlobName(name) ? await shop.blobs.get(name) : null;
    if (bytes instanceof Uint8Array) files.push({ name: `${name.slice(5, 21)}${endingOf(bytes)}`, bytes });
  }
  return files;
}

/** What a file is called by its first bytes (the formats' own signatures). */
function endingOf(bytes: Uint8Array): string {
  const begins = Buffer.from(bytes.subarray(0, 12)).toString('latin1');
  if (begins.startsWith('\xFF\xD8\xFF')) return '.jpg';
  if (begins.startsWith('\x89PNG')) return '.png';
  if (begins.startsWith('%PDF-')) return '.pdf';
  return begins.startsWith('RIFF') && begins.endsWith('WEBP') ? '.webp' : '.bin';
}
