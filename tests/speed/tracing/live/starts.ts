import type { FaultModel, TracingCase } from '../../../../core/tracing/live/types.ts';
import { afterDoing, aTracingCase } from '../../../builders/tracingCase.ts';

type Start = { readonly told: string; readonly seen: string; readonly often: string; readonly group: string };

/** What owners tell and the bench sees, over all symptom groups. */
export const STARTS: readonly Start[] = [
  { told: 'no-reaction', seen: 'no-reaction', often: 'every-time', group: 'no-reaction' },
  { told: 'restarts-itself', seen: 'restarts-itself', often: 'every-time', group: 'cycles' },
  { told: 'dark-runs', seen: 'no-lock-light', often: 'every-time', group: 'no-post' },
  { told: 'no-signal', seen: 'dark-but-alive', often: 'every-time', group: 'no-picture' },
  { told: 'stuck-loading', seen: 'stuck-loading', often: 'every-time', group: 'stops-starting' },
  { told: 'no-boot-device', seen: 'no-boot-device', often: 'every-time', group: 'no-system' },
  { told: 'shuts-off', seen: 'shuts-off', often: 'daily-several', group: 'fails-in-use' },
  { told: 'stripes', seen: 'stripes', often: 'always-on', group: 'picture-wrong' },
  { told: 'loud-fan', seen: 'loud-fan', often: 'always-on', group: 'heat-or-noise' },
  { told: 'drive-slow', seen: 'drive-slow', often: 'always-on', group: 'drives' },
  { told: 'net-dead', seen: 'net-dead', often: 'always-on', group: 'ports' },
  { told: 'slow', seen: 'slow', often: 'always-on', group: 'software' },
  { told: 'shuts-off', seen: 'fine-here', often: 'daily-several', group: 'not-shown' },
];

/** Looked inside and the first start watched: where every policy begins. Machine n has the n-th of the starts, in turn. */
export function startOf(model: FaultModel, n: number): TracingCase {
  const { told, seen, often, group } = STARTS[n % STARTS.length] as Start;
  const told0 = { symptoms: [told], changed: [], often: [often], onlyWhen: [], rate: null };
  const looked = afterDoing(model, aTracingCase({ told: told0 }), 'look-inside', 'clean');
  return afterDoing(model, { ...looked, seen: [seen] }, 'watch-start', group);
}
