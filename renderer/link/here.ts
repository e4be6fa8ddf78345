import { useQuery } from '@tanstack/react-query';
import type { HereSheet } from '../../core/contract/hereSheet.ts';
import { queries, queryOf } from './service.ts';

/** Asked this often: the service locks a screen by its own clock, and another page of this browser may have changed who is here. */
const EVERY_MS = 15_000;

const options = () =>
  queryOf.here.queryOptions({ refetchInterval: EVERY_MS, meta: { follows: { streams: ['people', 'shop'] } } });

/** Who is at this screen, as the service has it; undefined until it has answered. */
export const useHere = (): HereSheet | undefined => useQuery(options()).data;

/** Asks anew who is here, before anything that was shown to another is shown on. */
export const hereAgain = (): Promise<void> => queries.invalidateQueries({ queryKey: options().queryKey });
