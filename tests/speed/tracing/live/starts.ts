import type { FaultModel, TracingCase } from '../../../../core/tracing/live/types.ts';
import { afterDoing, aTracingCase } from '../../../builders/tracingCase.ts';

type Start = { readonly told: string; readonly seen: string; readonly often: string; readonly group: string };

/** What owners tell and the bench sees, over all symptom groups. */
export const STARTS: readonly Start[] = [
  { told: 'no-reaction', seen: 'no-reaction', often: 'every-time', group: 'nr' },
  { told: 'restarts-itself', seen: 'restarts-itself', often: 'every-time', group: 'cy' },
  { told: 'dark-runs', seen: 'no-lock-light', often: 'every-time', group: 'np' },
  { told: 'no-signal', seen: 'dark-but-alive', often: 'every-time', group: 'px' },
  { told: 'stuck-loading', seen: 'stuck-loading', often: 'every-time', group: 'sb' },
  { told: 'no-boot-device', seen: 'no-boot-device', often: 'every-time', group: 'bd' },
  { told: 'shuts-off', seen: 'shuts-off', often: 'daily-several', group: 'fr' },
  { told: 'stripes', seen: 'stripes', often: 'always-on', group: 'ar' },
  { told: 'loud-fan', seen: 'loud-fan', often: 'always-on', group: 'hn' },
  { told: 'drive-slow', seen: 'drive-slow', often: 'always-on', group: 'dr' },
  { told: 'net-dead', seen: 'net-dead', often: 'always-on', group: 'po' },
  { told: 'slow', seen: 'slow', often: 'always-on', group: 'sw' },
  { told: 'shuts-off', seen: 'fine-here', often: 'daily-several', group: 'nf' },
];

/** Looked inside and the first start watched: where every policy begins. Machine n has the n-th of the starts, in turn. */
export function startOf(model: FaultModel, n: number): TracingCase {
  const { told, seen, often, group } = STARTS[n % STARTS.length] as Start;
  const told0 = { symptoms: [told], changed: [], often: [often], onlyWhen: [], rate: null };
  const looked = afterDoing(model, aTracingCase({ told: told0 }), 'look-inside', 'clean');
  return afterDoing(model, { ...looked, seen: [seen] }, 'watch-start', group);
}
