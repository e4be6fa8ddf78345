import { LIVES } from './model/needs.ts';
import type { Group, Life } from './types.ts';

/** How far a machine of a symptom group gets by itself. */
export const LIFE_OF: Readonly<Record<Group, Life>> = {
  'no-reaction': 'none',
  cycles: 'reacts',
  'no-post': 'reacts',
  'no-picture': 'posts',
  'stops-starting': 'picture',
  'no-system': 'picture',
  'fails-in-use': 'system',
  'picture-wrong': 'picture',
  'heat-or-noise': 'system',
  drives: 'system',
  ports: 'system',
  software: 'system',
  'not-shown': 'system',
};

/** Does a machine that gets so far get as far as this? */
export const reaches = (has: Life, needs: Life): boolean => LIVES.indexOf(has) >= LIVES.indexOf(needs);
