import { keysOf } from '../table.ts';
import type { EngineVerdict } from '../tracing/live/types.ts';

type EngineWay = Extract<EngineVerdict, { readonly verdict: 'confirmed' }>['way'];

/** What a confirmed verdict rests on, as it is written: taken out and put in again, the second rig, or what the part itself showed. */
export const CONFIRMED_BY = ['both-ways', 'on-the-second-rig', 'by-its-own-evidence'] as const;

/** The same by the words of the tracing engine and of papers. */
export const WRITTEN_AS = {
  'both-ways': 'both-ways',
  'second-rig': 'on-the-second-rig',
  'own-evidence': 'by-its-own-evidence',
} as const satisfies { readonly [way in EngineWay]: (typeof CONFIRMED_BY)[number] };

/** What is written in an entry, in the words of papers. */
export const asOnPaper = (written: (typeof CONFIRMED_BY)[number]): EngineWay =>
  keysOf(WRITTEN_AS).find((way) => WRITTEN_AS[way] === written) ?? 'both-ways';
