import story from '../../assets/demo/story.json' with { type: 'json' };

/** What the desk writes when a machine comes whose fault is to be found, under a limit of 120; `says` what differs. */
export const takingIn = (says: Readonly<Record<string, unknown>> = {}) => ({
  owner: { fresh: story.owner },
  machine: { fresh: { called: story.machine.called, tag: null, serial: null } },
  enquiry: null,
  cameBack: null,
  tasks: null,
  charging: 'charged',
  told: story.told,
  cameAlong: [],
  lift: 'one',
  limitMinor: 12_000,
  smallPartsUpToMinor: 0,
  deadline: null,
  substitution: { used: true, lesser: 'ask' },
  recording: false,
  ...says,
});
