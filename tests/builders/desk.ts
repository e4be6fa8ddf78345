import { createHash } from 'node:crypto';
import { agreed } from '../../core/approval/consent.ts';
import type { TracingDoor } from '../../core/bench/tracingDoor.ts';
import type { CommandName } from '../../core/commands/commands.ts';
import { signShown, toBeSigned } from '../../core/commands/kernel/contentHashes.ts';
import { zAsked, zPreview } from '../../core/contract/contract.ts';
import type { Previewed } from '../../core/contract/previewed.ts';
import type { View } from '../../core/entries/view.ts';
import type { JobId } from '../../core/ids.ts';
import type { Refusal } from '../../core/refusal.ts';
import { epochMs, minutes } from '../../core/time.ts';
import type { Executed, NotExecuted, OpenShop } from '../../db/index.ts';
import { seededChance } from '../../electron/cli/demo/seededChance.ts';
import { carryOut } from '../../electron/service/desk/carryOut.ts';
import { loadView } from '../../electron/service/desk/loadView.ts';
import { preview } from '../../electron/service/desk/preview.ts';
import type { Tools } from '../../electron/service/desk/tools.ts';
import { openEngine } from '../../electron/service/openEngine.ts';
import { openTools } from '../../electron/service/openTools.ts';
import { aShopFolder, type ShopFolder } from './shopFolder.ts';

/** A shop with its doors open: commands by name, as screens ask them, on a real database in a folder of its own. */
export type Desk = {
  readonly shop: OpenShop;
  readonly folder: ShopFolder;
  /** Asks and expects it done. */
  readonly ask: (name: CommandName, input: unknown, by?: string) => Promise<Executed>;
  /** Asks, whatever comes of it. */
  readonly tries: (name: CommandName, input: unknown, by?: string) => Promise<Executed | NotExecuted>;
  /** Asks and expects a refusal. */
  readonly refused: (name: CommandName, input: unknown, by?: string) => Promise<Refusal>;
  /** Asks, and says what came of it. */
  readonly tried: (name: CommandName, input: unknown, by?: string) => Promise<Executed | NotExecuted>;
  /** What a command would come to, as whoever signs is shown it. */
  readonly shows: (name: CommandName, input: unknown, by?: string) => Promise<Previewed | Refusal>;
  /** Asks with signatures as they are, and expects a refusal. */
  readonly unsigned: (name: CommandName, input: unknown) => Promise<Refusal>;
  readonly view: (job: JobId) => Promise<View>;
  readonly pass: (minutes: number) => void;
  readonly close: () => Promise<void>;
};

let commands = 0;

/** Opens a fresh shop with the given tracing engine. */
export async function aDesk(tracing: TracingDoor = fewSteps): Promise<Desk> {
  const realTools = openTools(openEngine(), () => null);
  const folder = aShopFolder();
  const shop = await folder.opened();
  const tools: Tools = {
    ...seededChance(7),
    sha256: (text) => createHash('sha256').update(text, 'utf8').digest('hex'),
    lastHead: null,
    tracing: () => tracing,
    jobWords: realTools.jobWords,
    paperSetting: realTools.paperSetting,
  };
  const shows = (name: CommandName, input: unknown, by: string) =>
    preview(shop, tools, zPreview.parse({ by, name, input }), folder.clock.now);
  /** What is to be signed is shown first, and signed as shown; where that is refused, the command says so itself. */
  const asSigned = async (name: CommandName, input: unknown, by: string) => {
    if (!toBeSigned(input)) return input;
    const shown = await shows(name, input, by);
    return signShown(input, 'refused' in shown ? 'nothing was shown' : shown.contentHash);
  };
  const asItIs = (name: CommandName, input: unknown, by: string) => {
    const asked = zAsked.parse({ command: `c${++commands}`, by, name, input });
    return carryOut(shop, tools, 'bench-1', asked);
  };
  const carry = async (name: CommandName, given: unknown, by: string) =>
    asItIs(name, await asSigned(name, given, by), by);
  return {
    shop,
    folder,
    ask: async (name, input, by = 'bram') => {
      const done = await carry(name, input, by);
      if (!done.ok) throw new Error(`${name} was refused: ${JSON.stringify(done.refusal)}`);
      return done;
    },
    tries: (name, input, by = 'bram') => carry(name, input, by),
    refused: async (name, input, by = 'bram') => {
      const done = await carry(name, input, by);
      if (done.ok) throw new Error(`${name} was carried out`);
      return done.refusal;
    },
    tried: (name, input, by = 'bram') => carry(name, input, by),
    unsigned: async (name, input) => {
      const done = await asItIs(name, input, 'bram');
      if (done.ok) throw new Error(`${name} was carried out`);
      return done.refusal;
    },
    shows: (name, input, by = 'bram') => shows(name, input, by),
    view: async (job) => loadView(await shop.read(), { job }, folder.clock.now),
    pass: (passed) => {
      folder.clock.now = epochMs(folder.clock.now + passed * 60_000);
    },
    close: async () => {
      await shop.close();
      folder.remove();
    },
  };
}

/** A tracing engine that knows a few steps and believes nothing: for what does not turn on belief. */
export const fewSteps: TracingDoor = {
  rules: (id) =>
    id === 'unknown-step'
      ? null
      : {
          id,
          handsOn: minutes(3),
          outcomes: ['works', 'same', 'worse'],
          places: [],
          means: { works: 'works', same: 'same', worse: 'worse' },
          triedWithout: id === 'dimm-loan' ? ['dimm'] : [],
          oneByOne: false,
          gives: {},
          handling: {
            takesOut: id === 'dimm-loan' ? ['dimm'] : [],
            borrows: id === 'dimm-loan' ? 'dimm' : null,
            alsoBorrows: [],
            ...(id === 'dimm-loan' && { intoSlotOf: 'dimm' as const }),
            putsBack: 'same-slot',
            unplugs: [],
            movesDimms: false,
          },
        },
  lacking: ({ job }, id) =>
    (id === 'dimm-loan' ? (['open', 'own-parts-in'] as const) : (['open'] as const)).filter(
      (need) => !agreed(job.consents, need),
    ),
  gates: () => [],
  gatesOfWork: () => [],
  leftOut: () => [],
  suspects: () => ['dimm-dead', 'dimm-slot'],
  fault: () => ({ part: 'dimm', oneOf: null }),
  likeliest: () => ({ fault: 'dimm-dead', p: 0.5 }),
  harms: () => false,
  owed: () => [],
  verdict: () => ({ verdict: 'tracing' }),
  refusesModel: () => null,
  differ: (told, seen) => told.join() !== seen.join(),
};
