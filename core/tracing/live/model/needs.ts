/**
 * What the owner must have agreed to, or have at hand, before a step: consent ids, key-or-risk = recovery key in hand or
 * `risk-key` signed, and what takes days, agreed to by an answer of its own (`DAYS_AWAY`).
 */
export const NEEDS = [
  'open',
  'own-parts-in',
  'start-own',
  'read',
  'copy',
  'write',
  'risk',
  'key-or-risk',
  'order-to-try',
  'send-out',
] as const;

export type Need = (typeof NEEDS)[number];

/** What an owner can be asked for while tracing: one of these, the disk's recovery key itself, or more than the limit agreed. */
export const WORDS = [...NEEDS, 'key', 'limit'] as const;

export type Word = (typeof WORDS)[number];

/** How far the machine gets by itself: what a step may ask for before it makes sense. */
export const LIVES = ['none', 'reacts', 'posts', 'picture', 'system'] as const;

export type Life = (typeof LIVES)[number];

export const MACHINE_NEEDS = [
  'graphics-in-processor',
  'card',
  'two-dimms',
  'two-drives',
  'socketed-memory',
  'socketed-processor',
  'standard-supply',
  'riser',
  'add-in',
  'modular-supply',
  'drive',
  'firmware-rescue',
  'second-slot',
  'key-in-hand',
  'named-part',
  'cure-to-prove',
  'after-our-work',
  'works-here',
  'gate-to-clear',
  'failed-here',
  'swept',
  'two-screens',
  'no-input',
  'no-sound',
  'burnt-seen',
  'short-to-follow',
  'wet-seen',
  'mains-doubtful',
  'standby-low',
  'outside-supply',
  'watts-unknown',
  'part-added',
  'part-unknown',
  'noise-told',
  'stays-on',
  'board-speaks',
  'no-card',
  'drive-failing',
  'word-lacking',
  'plug-to-press',
  'card-to-seat',
  'no-extortion',
] as const;

export type MachineNeed = (typeof MACHINE_NEEDS)[number];
