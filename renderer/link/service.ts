import { type ClientLink, createORPCClient, ORPCError } from '@orpc/client';
import { RPCLink as FetchLink } from '@orpc/client/fetch';
import { RPCLink as PortLink } from '@orpc/client/message-port';
import { SimpleCsrfProtectionLinkPlugin } from '@orpc/client/plugins';
import type { ContractRouterClient } from '@orpc/contract';
import { createTanstackQueryUtils } from '@orpc/tanstack-query';
import { QueryClient } from '@tanstack/react-query';
import type { contract } from '../../core/contract/contract.ts';
import { PAGE_KEY_HEADER } from '../../core/contract/pageKey.ts';
import { isBarred } from './barred.ts';
import { setConnected } from './connection.ts';
import { followChanges } from './followChanges.ts';
import { openPort } from './openPort.ts';
import { pageKey } from './pageKey.ts';
import { renewingLink } from './renewingLink.ts';
import { markStale } from './stale.ts';

/** The service's procedures: `await service.…(input)`. Refusals are thrown as typed errors, a preview's alone come back as values. */
export const service: ContractRouterClient<typeof contract> = createORPCClient(link());

/** The same for react-query: `useQuery(ask.….queryOptions({ input, meta: { follows } }))`. */
export const queryOf = createTanstackQueryUtils(service);

/**
 * Answers stay fresh until the change stream says otherwise, so nothing is asked for again by time or focus.
 * The service is on this computer: no network is needed. Asking again helps only when the way was lost, and is safe
 * for commands too: the same command id is carried out once.
 */
export const queries = new QueryClient({
  defaultOptions: {
    queries: {
      staleTime: Number.POSITIVE_INFINITY,
      networkMode: 'always',
      refetchOnWindowFocus: false,
      retry: whenTheWayWasLost,
    },
    mutations: { networkMode: 'always', retry: whenTheWayWasLost },
  },
});

/** Starts this window's change stream; it goes on until the window is closed. */
export function startFollowing(): void {
  void followChanges({
    changes: (since, signal) => service.changes({ since }, { signal }),
    onChange: (change) => {
      if (!isBarred()) markStale(queries, change);
    },
    onAnew: () => {
      if (!isBarred()) void queries.invalidateQueries();
    },
    onConnected: setConnected,
    wait: (ms) => new Promise((done) => setTimeout(done, ms)),
    signal: new AbortController().signal,
  });
}

function whenTheWayWasLost(failures: number, error: unknown): boolean {
  return !(error instanceof ORPCError) && failures < 3;
}

/** In the app's own window a port of its own, in a browser the address the page came from. */
function link(): ClientLink<Record<never, never>> {
  if (location.protocol !== 'app:') {
    return new FetchLink({
      url: `${location.origin}/rpc`,
      headers: { [PAGE_KEY_HEADER]: pageKey() },
      plugins: [new SimpleCsrfProtectionLinkPlugin()],
    });
  }
  return renewingLink(async () => {
    const port = await openPort();
    const lost = new Promise((gone) => port.addEventListener('close', gone, { once: true }));
    const way = new PortLink({ port });
    port.start();
    return { link: way, lost };
  });
}
