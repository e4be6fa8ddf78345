import { expect, test } from 'vitest';
import { renewingLink, type Transport } from './renewingLink.ts';

function ways() {
  const opened: PromiseWithResolvers<void>[] = [];
  const open = async (): Promise<Transport<Record<never, never>>> => {
    const number = opened.length;
    const lost = Promise.withResolvers<void>();
    opened.push(lost);
    return { link: { call: async () => number }, lost: lost.promise };
  };
  return { open, opened };
}

const call = (link: ReturnType<typeof renewingLink>) => link.call(['list'], undefined, { context: {} });

test('calls at the same time share one way', async () => {
  const { open, opened } = ways();
  const link = renewingLink(open);
  expect(await Promise.all([call(link), call(link)])).toEqual([0, 0]);
  expect(opened).toHaveLength(1);
});

test('after the way was lost the next call opens another', async () => {
  const { open, opened } = ways();
  const link = renewingLink(open);
  await call(link);
  opened[0]?.resolve();
  await Promise.resolve().then(() => undefined);
  expect(await call(link)).toBe(1);
});

test('a way that could not be opened is tried again', async () => {
  const { open } = ways();
  let first = true;
  const link = renewingLink(() => {
    if (!first) return open();
    first = false;
    return Promise.reject(new Error('no port'));
  });
  await expect(call(link)).rejects.toThrow('no port');
  expect(await call(link)).toBe(0);
});
