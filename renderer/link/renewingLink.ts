import type { ClientContext, ClientLink } from '@orpc/client';

/** A way to the service that can be lost, for instance when the service is started anew. */
export type Transport<Context extends ClientContext> = {
  readonly link: ClientLink<Context>;
  readonly lost: Promise<unknown>;
};

/** A link that opens its way with the first call, and a new one with the first call after it was lost. */
export function renewingLink<Context extends ClientContext>(
  open: () => Promise<Transport<Context>>,
): ClientLink<Context> {
  let way: Promise<Transport<Context>> | undefined;
  const current = (): Promise<Transport<Context>> => {
    if (way) return way;
    const opening = open();
    way = opening;
    const forget = () => {
      if (way === opening) way = undefined;
    };
    opening.then(({ lost }) => lost.then(forget, forget), forget);
    return opening;
  };
  return { call: async (path, input, options) => (await current()).link.call(path, input, options) };
}
