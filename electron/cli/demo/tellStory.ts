import type { MachineReport } from '../../../core/custody/machineReport.ts';
import { tellStep } from './bench.ts';
import type { FittingWork } from './fittingWork.ts';
import { fittingAndProving, goingHome, leaveForTheNight } from './home.ts';
import { line, named } from './lines.ts';
import { openingDay } from './openingDay.ts';
import { askChangedFinding, offerSubstitute } from './ownersWord.ts';
import { type FoundMachine, STORY, type StoryPart, type StoryStep } from './story.ts';
import { sayEstimate, takingIn } from './takingIn.ts';
import type { Teller } from './teller.ts';

/** What is told: on which machine, by which steps, with which wall. */
export type Story = {
  readonly called: string;
  readonly report: { readonly text: string; readonly said: MachineReport; readonly taken: string };
  readonly found: FoundMachine;
  /** Where the census comes from: seen at the bench, or the machine's own report. */
  readonly source: 'census' | 'own-report';
  readonly wall: readonly StoryPart[];
  readonly firstPowerOn: readonly StoryStep[];
  readonly tracing: readonly StoryStep[];
  /** Steps of the log that confirm it; null where the log can only name it. */
  readonly evidence: readonly string[] | null;
  /** The slots that the story has dead. */
  readonly deadSlots: readonly string[];
  readonly uses: Readonly<Record<string, number>>;
  readonly fitting: readonly FittingWork[];
  readonly newSlots: readonly string[];
  /** What had to be told differently on this machine, and why. */
  readonly remarks: readonly string[];
};

/** Where a telling can stop: for pictures and for trying a room by hand. */
export type Chapter = 'opening' | 'taken-in' | 'seen' | 'tracing' | 'traced' | 'fitting' | 'ready' | 'home';

/** Steps of the tracing after which a half-told story stands at the bench. */
const HALF_WAY = 9;

const TUESDAY = '2026-10-13';

/** Tells a story from the opened shop to the machine gone home. */
export async function tellStory(
  teller: Teller,
  told: Story,
  sealHeads: () => Promise<unknown>,
  until: Chapter = 'home',
): Promise<void> {
  const { story } = STORY;
  for (const remark of told.remarks) teller.say(remark);
  await openingDay(teller, told.wall);
  await sealHeads();
  if (until === 'opening') return;
  await takingIn(teller, told.report, told.called);
  if (until === 'taken-in') return;
  for (const step of told.firstPowerOn) await tellStep(teller, 'bram', TUESDAY, step, told);
  teller.clock.set(`${TUESDAY}T${story.seen.at}`);
  await teller.forJob('bram', 'recordSeen', { symptoms: story.seen.symptoms });
  const [toldOf, seen] = [story.told.symptoms, story.seen.symptoms].map((ids) => ids.map(named.symptom));
  teller.say(line('told-seen', { told: toldOf, seen }));
  await sayEstimate(teller);
  const { job } = await teller.sheet();
  teller.say(line('stage', { stage: named.stage(job.stage) }));
  if (until === 'seen') return;
  await askChangedFinding(teller);
  const tracing = until === 'tracing' ? told.tracing.slice(0, HALF_WAY) : told.tracing;
  for (const step of tracing) await tellStep(teller, 'bram', TUESDAY, step, told);
  if (until === 'tracing' || until === 'traced') return;
  await confirm(teller, told);
  await offerSubstitute(teller, told.uses);
  await leaveForTheNight(teller);
  if (until === 'fitting') return;
  await fittingAndProving(teller, told.fitting, told.newSlots);
  await sealHeads();
  if (until === 'ready') return;
  await goingHome(teller);
}

async function confirm(teller: Teller, { evidence, deadSlots }: Pick<Story, 'evidence' | 'deadSlots'>): Promise<void> {
  const { confirmed } = STORY.story;
  teller.clock.set(`${TUESDAY}T${confirmed.at}`);
  const { job } = await teller.sheet();
  const which = deadSlots.join(', ') || null;
  const blamed = { fault: confirmed.fault, part: await teller.own(confirmed.slot), which };
  if (evidence === null) {
    await teller.forJob('bram', 'nameFault', { ...blamed, why: line('named-why') });
    teller.say(line('only-named', { fault: named.fault(confirmed.fault) }));
    return;
  }
  const runs = evidence.map((step) => job.work.findLast((work) => work.what === step)?.run ?? step);
  await teller.forJob('bram', 'judge', {
    verdict: { is: 'confirmed', ...blamed, way: confirmed.way, evidence: runs, readings: [] },
  });
  teller.say(line('confirmed', { way: named.way(confirmed.way), fault: named.fault(confirmed.fault) }));
}
