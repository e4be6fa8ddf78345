import story from '../../assets/demo/story.json' with { type: 'json' };

/** The machine of the story, with its tag on. */
export const taggedMachine = { fresh: { called: story.machine.called, tag: story.tag, serial: null } };

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

/** The same with its sheet answered and signed, in one press; the signature names what was shown once it is shown. */
export const signingIn = (says: Readonly<Record<string, unknown>> = {}) => ({
  ...takingIn({ machine: taggedMachine }),
  promised: null,
  before: null,
  report: null,
  estimate: null,
  answers: { open: 'yes' },
  photographs: [],
  alone: [],
  signed: { name: story.owner.name, drawn: null, contentHash: null },
  ...says,
});
