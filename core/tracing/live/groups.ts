/** What kind of trouble a machine shows, from the mains to the system; a machine may show more than one. */
export const GROUPS = [
  'no-reaction',
  'cycles',
  'no-post',
  'no-picture',
  'stops-starting',
  'no-system',
  'drives',
  'fails-in-use',
  'picture-wrong',
  'heat-or-noise',
  'ports',
  'software',
  'not-shown',
] as const;
export type Group = (typeof GROUPS)[number];
