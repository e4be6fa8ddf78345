import { QueryClient } from '@tanstack/react-query';
import { expect, test } from 'vitest';
import { markStale, touches } from './stale.ts';

const change = { seq: 7, streams: ['job:a', 'part:k7r'], kinds: ['partMoved'] };

test.each([
  [{ streams: ['job:a'] }, true],
  [{ streams: ['job:'] }, true],
  [{ streams: ['shop', 'part:k7r'] }, true],
  [{ kinds: ['partMoved'] }, true],
  [undefined, true],
  [{ streams: ['job:ab'] }, false],
  [{ streams: ['job'] }, false],
  [{ streams: ['owner:'], kinds: ['consentGiven'] }, false],
  [{}, false],
  [{ streams: ['job:'], but: ['partMoved'] }, false],
  [{ streams: ['job:'], but: ['estimated'] }, true],
])('an answer that follows %j is stale after a part moved into job a: %s', (follows, expected) => {
  expect(touches(change, follows)).toBe(expected);
});

test('where a window starts from makes nothing stale', () => {
  expect(touches({ seq: 7, streams: [], kinds: [] }, undefined)).toBe(false);
});

test('only the answers that are touched are asked for again', () => {
  const queries = new QueryClient();
  queries.setQueryDefaults(['job'], { meta: { follows: { streams: ['job:a'] } } });
  queries.setQueryDefaults(['owner'], { meta: { follows: { streams: ['owner:'] } } });
  for (const key of ['job', 'owner']) queries.setQueryData([key], 1);
  markStale(queries, change);
  expect(queries.getQueryState(['job'])?.isInvalidated).toBe(true);
  expect(queries.getQueryState(['owner'])?.isInvalidated).toBe(false);
});
