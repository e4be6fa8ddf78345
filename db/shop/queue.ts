/** Runs pieces of work one after another, in the order they were asked for. */
export type Queue = <T>(work: () => Promise<T>) => Promise<T>;

/** A queue of its own; a piece that fails does not stop the next. */
export function openQueue(): Queue {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const done = last.then(work, work);
    last = done.catch(() => undefined);
    return done;
  };
}
