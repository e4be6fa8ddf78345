import type { TakenIn } from '../../core/job/entries.ts';
import { personal } from '../../core/journal/personal.ts';

/** What the journal says of a machine that was taken in to have its fault found, under a limit of 120. */
export const takenInBody = (
  { owner, machine, tag }: Pick<TakenIn, 'owner' | 'machine' | 'tag'>,
  told: { readonly ownWords: string; readonly symptoms: readonly string[] },
): TakenIn => ({
  owner,
  machine,
  tag,
  tasks: null,
  charging: 'charged',
  enquiry: null,
  cameBackFrom: null,
  told: {
    ownWords: personal('contact', owner, told.ownWords),
    symptoms: told.symptoms,
    changed: [],
    often: [],
    onlyWhen: [],
    sinceDays: null,
    lastWorked: null,
  },
  cameAlong: [],
  lift: 'one',
  limitMinor: 12_000,
  smallPartsUpToMinor: 500,
  feeMinor: 3000,
  perMinuteMinor: 75,
  deadline: null,
  substitution: { used: true, lesser: 'ask' },
  recording: false,
});
