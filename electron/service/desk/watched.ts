import type { View } from '../../../core/entries/view.ts';
import type { Stream } from '../../../core/journal/entry.ts';

/** The same things, saying when anybody asks them anything. */
export function watched<Thing extends object>(thing: Thing, onAsked: () => void): Thing {
  return new Proxy(thing, {
    get: (target, name) => {
      onAsked();
      return Reflect.get(target, name);
    },
  });
}

/**
 * A view that says when it is asked for what one of these streams would tell, which are set apart: the shop, or a part or
 * rig by its id.
 */
export const watchedView = (view: View, apart: ReadonlySet<Stream>, onAsked: (stream: Stream) => void): View => ({
  ...view,
  shop: apart.has('shop') ? watched(view.shop, () => onAsked('shop')) : view.shop,
  parts: new WatchedMap(view.parts, (id) => asked(`part:${id}`, apart, onAsked)),
  rigs: new WatchedMap(view.rigs, (id) => asked(`machine:${id}`, apart, onAsked)),
});

const asked = (stream: Stream, apart: ReadonlySet<Stream>, onAsked: (stream: Stream) => void): void => {
  if (apart.has(stream)) onAsked(stream);
};

class WatchedMap<Id, Thing> extends Map<Id, Thing> {
  readonly #onAsked: (id: Id) => void;

  constructor(things: ReadonlyMap<Id, Thing>, onAsked: (id: Id) => void) {
    super(things);
    this.#onAsked = onAsked;
  }

  override get(id: Id): Thing | undefined {
    this.#onAsked(id);
    return super.get(id);
  }
}
