import { describe, expectTypeOf, it } from 'vitest';
import type { IdOf, WordGroup, WordKey } from './catalogue.ts';

// The types part of the tests holds these: what is said here does not compile when it is not so.
describe('keys of texts', () => {
  it('are those that have a text, and no others', () => {
    expectTypeOf<'counter.job.sheet'>().toExtend<WordKey>();
    expectTypeOf<'counter.job.shet'>().not.toExtend<WordKey>();
    expectTypeOf<'counter.job'>().not.toExtend<WordKey>();
    expectTypeOf<string>().not.toExtend<WordKey>();
  });

  it('can be built where every text they can come to is there', () => {
    expectTypeOf<`kit.${'yes' | 'no'}`>().toExtend<WordKey>();
    expectTypeOf<`kit.${'yes' | 'perhaps'}`>().not.toExtend<WordKey>();
  });

  it('are known by group', () => {
    expectTypeOf<'counter.job.rows'>().toExtend<WordGroup>();
    expectTypeOf<'counter.job.rows.home'>().not.toExtend<WordGroup>();
    expectTypeOf<'hand-over'>().toExtend<IdOf<'counter.job.rows'>>();
    expectTypeOf<'hand-ower'>().not.toExtend<IdOf<'counter.job.rows'>>();
  });
});
