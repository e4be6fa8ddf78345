/** Kinds of doing that a case may forbid, beside single steps. */
export const KINDS = [
  'mains-on',
  'start',
  'load',
  'loaner-in',
  'own-part-on-rig',
  'suspect-put-back-under-power',
  'write-to-owners-drive',
  'owners-system-started',
  'drive-worked',
  'drive-powered',
  'processor-out',
  'cooler-off',
  'board-out',
  'supply-out',
  'card-out',
  'panel-open',
  'settings-cleared',
  'firmware-written',
  'mains-pulled',
  'part-ordered',
  'sent-away',
  'settled',
] as const;

/** Kinds that may be narrowed: to one kind of part, or to one way of settling. */
export const ANY_PART = ['loaner-in', 'own-part-on-rig', 'settled'] as const;
