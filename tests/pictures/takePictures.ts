import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import appWords from '../../assets/words/en/app.json' with { type: 'json' };
import { runDemo } from '../../electron/cli/demo/runDemo.ts';
import type { Chapter } from '../../electron/cli/demo/tellStory.ts';
import { type OpenedApp, openInBrowser } from '../journeys/runtime/openApp.ts';

/** A room at a moment of the story: which chapter it stands at, and where it is reached. */
type Scene = {
  readonly room: string;
  readonly chapter: Chapter;
  readonly path: (job: string) => string;
  /** What starts the clock that is shown. */
  readonly press?: string;
};

const SCENES: readonly Scene[] = [
  { room: 'day-line', chapter: 'tracing', path: () => '#/' },
  { room: 'counter-taking-in', chapter: 'opening', path: () => '#/counter' },
  { room: 'counter-taken-in', chapter: 'taken-in', path: (job) => `#/counter/${job}` },
  { room: 'counter-owners-word', chapter: 'seen', path: (job) => `#/counter/${job}` },
  { room: 'bench-tracing', chapter: 'tracing', path: (job) => `#/bench/${job}` },
  { room: 'bench-step-under-way', chapter: 'tracing', path: (job) => `#/bench/${job}`, press: 'Start' },
  { room: 'bench-fitting', chapter: 'fitting', path: (job) => `#/bench/${job}` },
  { room: 'counter-hand-over', chapter: 'ready', path: (job) => `#/counter/${job}` },
  { room: 'counter-gone-home', chapter: 'home', path: (job) => `#/counter/${job}` },
  { room: 'wall', chapter: 'tracing', path: () => '#/wall' },
  { room: 'reckoning', chapter: 'home', path: () => '#/reckoning' },
];
const SIZES = [
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
];
const WAITING = appWords.waiting;
/** How a room is looked at: by day, by night, and in the colours of somebody's own. */
const LOOKS = [
  { look: 'light', media: { colorScheme: 'light', forcedColors: 'none' } },
  { look: 'dark', media: { colorScheme: 'dark', forcedColors: 'none' } },
  { look: 'forced', media: { colorScheme: 'dark', forcedColors: 'active' } },
] as const;

const { out, room } = parseArgs({
  options: { out: { type: 'string', default: 'out/pictures' }, room: { type: 'string' } },
}).values;
mkdirSync(out, { recursive: true });
for (const chapter of new Set(
  SCENES.filter((scene) => !room || scene.room.startsWith(room)).map((scene) => scene.chapter),
))
  await chapterPictures(chapter);
if (!room) await paperPictures();

async function chapterPictures(chapter: Chapter): Promise<void> {
  const config = mkdtempSync(join(tmpdir(), 'knowngood-pictures-'));
  const { ended } = await runDemo({
    out: null,
    machine: null,
    print: () => undefined,
    folder: join(config, 'knowngood'),
    until: chapter,
  });
  const app = await openInBrowser({ data: join(config, 'knowngood', 'shop'), config });
  await app.page.getByRole('button', { name: 'Bram Ostler' }).click();
  await app.page.getByRole('link', { name: 'Counter' }).waitFor();
  for (const scene of SCENES.filter((one) => one.chapter === chapter && (!room || one.room.startsWith(room))))
    await scenePictures(app, scene, ended?.job.id ?? '');
  await app.close();
  rmSync(config, { recursive: true, force: true });
}

async function scenePictures({ page }: OpenedApp, scene: Scene, job: string): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, scene.path(job));
  await page.waitForTimeout(900);
  await page.getByText(WAITING).first().waitFor({ state: 'detached' });
  if (scene.press) {
    await page.getByRole('button', { name: scene.press, exact: true }).click();
    await page.getByRole('timer').waitFor();
  }
  for (const size of SIZES) {
    await page.setViewportSize(size);
    for (const { look, media } of LOOKS) {
      await page.emulateMedia(media);
      await page.waitForTimeout(900);
      await page.screenshot({ path: join(out, `${scene.room}-${scene.chapter}-${look}-${size.width}.png`) });
    }
  }
}

/** The first page of each paper, as a reader draws it. */
async function paperPictures(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'knowngood-papers-'));
  await runDemo({ out: folder, machine: null, print: () => undefined });
  for (const file of readdirSync(folder).filter((name) => name.endsWith('.pdf')))
    execFileSync('pdftoppm', [
      '-r',
      '80',
      '-png',
      '-f',
      '1',
      '-singlefile',
      join(folder, file),
      join(out, `paper-${file.replace('.pdf', '')}`),
    ]);
  rmSync(folder, { recursive: true, force: true });
}
