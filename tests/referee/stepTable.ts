/**
 * What hands do in a step, in words of this referee alone. Written by reading each step's own words in
 * `assets/words/en/tracing.json`, one after the other; nothing here is taken from the model's fields.
 */
export type Doing =
  /** Their machine gets mains, were it only for standby. */
  | 'mains'
  /** It is switched on, and goes on into whatever system it finds. */
  | 'start'
  /** It is switched on and stays on our stick or in set-up: their own system does not start. */
  | 'start-ours'
  /** It runs hard for a third of an hour or more. */
  | 'load'
  /** What feeds it is ours, with our leads. */
  | 'our-supply'
  /** Ours has the same plug and volts as theirs. */
  | 'same-plug'
  /** Their supply is fed with mains on our tester. */
  | 'tester'
  | 'ours-dimm'
  | 'ours-card'
  | 'ours-supply'
  | 'ours-processor'
  | 'ours-board'
  | 'ours-drive'
  | 'ours-cooler'
  | 'rig-card'
  | 'rig-dimm'
  | 'rig-processor'
  | 'rig-board'
  /** No drive of theirs is connected while it runs. */
  | 'without-drives'
  /** Their own system is wanted to run. */
  | 'their-system'
  /** Their drive is read far and wide, in the machine. */
  | 'drive-works'
  /** Their drive is asked for its own health, in the machine. */
  | 'drive-asked'
  /** Their drive gets power outside of the machine, write-blocked. */
  | 'drive-dock'
  /** Their drive gets power in the machine, on another plug. */
  | 'drive-powered'
  | 'copies'
  | 'reads-data'
  | 'writes'
  /** Writes a system, or what starts it, anew. */
  | 'writes-over'
  /** Nothing of before is left on the drive. */
  | 'sets-up-anew'
  | 'clears'
  | 'firmware'
  | 'firmware-rescue'
  | 'firmware-clip'
  | 'foreign-board'
  | 'pulls-mains'
  | 'opens'
  | 'card-out'
  /** Their own card is in and gets power. */
  | 'card-powered'
  | 'cooler-off'
  | 'processor-out'
  | 'board-out'
  /** What was the suspect goes back in and is switched on. */
  | 'put-back'
  | 'orders'
  | 'sends'
  /** Looks where it is burnt, or puts what is burnt right. */
  | 'finds-burn'
  /** The cooler put right or another one on. */
  | 'cools'
  /** Cleans and dries before it is switched on again. */
  | 'dries'
  /** Puts other leads in place of those that are there. */
  | 'other-leads'
  /** The tracing ends here. */
  | 'ends';

const inside = (...doings: readonly Doing[]): readonly Doing[] => ['opens', 'pulls-mains', ...doings];

/** Every step of the fault model, and every one that may come, with what is done in it. */
export const STEP_TABLE: Readonly<Record<string, readonly Doing[]>> = {
  // Asked and looked at: no hand goes in, no mains.
  'ask-change': [],
  'ask-part': [],
  'ask-owner': [],
  'ask-key': [],
  'use-explained': [],
  'watts-added': [],
  'drive-lab': [],
  'earth-insulation': [],
  'burnt-where': ['opens', 'finds-burn'],
  'look-inside': ['opens'],
  census: ['opens'],
  'slots-look': ['opens'],
  'cell-measure': ['opens'],
  'meas-coils': ['opens'],
  'short-cleared': ['opens'],
  'short-which': ['opens', 'card-out'],
  'leak-source': ['opens'],
  'battery-out': ['opens'],
  'cpu-look': ['opens', 'cooler-off', 'processor-out'],
  'under-look': ['opens', 'board-out'],
  'dust-out': ['opens'],
  // Standby is mains.
  'look-mains': ['mains'],
  'brick-measure': ['mains'],
  'meas-standby': ['opens', 'mains'],
  'main-plug-off': ['opens', 'mains'],
  'supply-alone': ['opens', 'tester'],
  'supply-cleared': ['opens', 'tester'],
  'rig-supply': ['opens', 'tester'],
  // Switched on as it is.
  'watch-start': ['start'],
  'look-picture': ['start'],
  'strip-outside': ['start'],
  'wall-watts': ['start'],
  'blind-life': ['start'],
  'wait-train': ['start'],
  'port-round': ['start'],
  'own-things': ['start'],
  'aerial-again': ['start'],
  'once-more': ['start'],
  'step-back': ['opens', 'start'],
  'as-before': ['opens', 'start'],
  'starts-five': ['start'],
  'starts-cold': ['start'],
  'soak-idle': ['start'],
  'device-elsewhere': ['start'],
  'keyboard-ours': ['start'],
  'screens-swap': ['start'],
  'drain-start': ['pulls-mains', 'start'],
  'ports-drain': ['pulls-mains', 'start'],
  'temp-watch': ['start'],
  'feel-heat': ['opens', 'start'],
  'fan-look': ['opens', 'start'],
  'fan-finger': ['opens', 'start'],
  'meas-rails': ['opens', 'start'],
  'rails-again': ['opens', 'start'],
  'rails-log': ['opens', 'start', 'load'],
  'warm-cool': ['opens', 'start'],
  'press-flex': ['opens', 'start'],
  // Switched on as far as set-up or our stick.
  'early-picture': ['start-ours'],
  'read-code': ['start-ours'],
  'date-look': ['start-ours'],
  'setup-notes': ['start-ours'],
  'setup-values': ['start-ours'],
  'setup-default': ['start-ours', 'clears'],
  'clock-set': ['start'],
  'trust-on': ['start'],
  'profile-off': ['start'],
  'boot-first': ['start'],
  'sweep-which': ['start'],
  'live-start': ['start-ours'],
  'space-look': ['start-ours'],
  'drive-health': ['start-ours', 'drive-asked'],
  'drive-read': ['start-ours', 'drive-works'],
  'scan-offline': ['start-ours', 'drive-works'],
  'mem-pass': ['start-ours', 'load'],
  'mem-night': ['start-ours', 'load'],
  'modules-passed': inside('start-ours', 'load'),
  'load-cpu': ['start-ours', 'load'],
  'load-card': ['start-ours', 'load'],
  'load-both': ['start-ours', 'load'],
  'load-long': ['start-ours', 'load'],
  // Their own system.
  'log-read': ['start', 'their-system', 'drive-works', 'reads-data'],
  'start-bare': ['start', 'their-system'],
  'sleep-round': ['start', 'their-system'],
  'output-choose': ['start', 'their-system'],
  'key-enter': ['start'],
  'sleep-set': ['start', 'their-system', 'writes'],
  'undo-update': ['start', 'their-system', 'writes'],
  'driver-anew': ['start', 'their-system', 'writes'],
  'clear-space': ['start', 'their-system', 'writes'],
  'tame-start': ['start', 'their-system', 'writes'],
  'malware-off': ['start', 'their-system', 'writes'],
  'second-account': ['start', 'their-system', 'writes'],
  'mend-start': ['start-ours', 'writes', 'writes-over'],
  'system-repair': ['start-ours', 'writes', 'writes-over'],
  'system-anew': ['start-ours', 'writes', 'writes-over', 'sets-up-anew'],
  // Their drive in our hands.
  'drive-dock': ['opens', 'drive-dock'],
  'drive-image': ['drive-dock', 'copies'],
  'drive-clone': ['opens', 'drive-dock', 'copies'],
  // Plugs, leads, seats.
  'front-plugs': inside('start'),
  'lanes-set': ['start', 'drive-powered'],
  'drive-cool': inside('start', 'drive-powered'),
  'fan-free': inside('start'),
  'press-plugs': inside('start', 'finds-burn'),
  'front-off': inside('start'),
  'lights-off': inside('start'),
  'addins-out': inside('start'),
  'pins-start': inside('start'),
  'cpu-plug-off': inside('start'),
  'fan-lead': inside('start'),
  'drives-off': inside('start', 'without-drives'),
  'drive-each': inside('start'),
  'lead-other': inside('start', 'other-leads', 'drive-powered'),
  'port-other': inside('start', 'drive-powered'),
  'aux-other': inside('start', 'card-powered', 'finds-burn'),
  'card-seat': inside('card-out', 'card-powered', 'start', 'finds-burn'),
  'card-none': inside('card-out', 'start', 'finds-burn'),
  'card-slot2': inside('card-out', 'card-powered', 'start'),
  'riser-none': inside('card-out', 'card-powered', 'start'),
  'riser-watched': inside('card-out', 'card-powered', 'start', 'load'),
  'card-paste': inside('card-out', 'card-powered', 'start'),
  'dimm-press': inside('start'),
  'dimm-wipe': inside('start'),
  'dimm-right': inside('start'),
  'dimm-one': inside('start'),
  'cmos-clear': inside('start', 'clears'),
  'cell-new': inside('start', 'clears'),
  sweep: inside('card-out', 'card-powered', 'start', 'clears'),
  'cool-even': inside('start', 'cools'),
  'cool-again': inside('cooler-off', 'start', 'cools'),
  'cpu-again': inside('cooler-off', 'processor-out', 'start', 'cools'),
  'bare-board': inside('card-out', 'board-out', 'start', 'without-drives'),
  'wet-clean': inside('board-out', 'start', 'dries'),
  // Ours in theirs.
  'dimm-loan': inside('ours-dimm', 'start'),
  'slot-each': inside('ours-dimm', 'start'),
  'card-loan': inside('card-out', 'ours-card', 'start'),
  'card-add': inside('ours-card', 'start'),
  'card-watched': inside('card-out', 'ours-card', 'start', 'load'),
  'dimm-watched': inside('ours-dimm', 'start', 'load'),
  'cool-loan': inside('cooler-off', 'ours-cooler', 'start', 'cools'),
  'drive-loan': inside('ours-drive', 'start', 'without-drives'),
  'supply-beside': inside('ours-supply', 'our-supply', 'start', 'other-leads'),
  'supply-in': inside('ours-supply', 'our-supply', 'start', 'load', 'other-leads'),
  'supply-watched': inside('ours-supply', 'our-supply', 'start', 'load', 'other-leads'),
  'brick-ours': ['ours-supply', 'our-supply', 'same-plug', 'start'],
  'cpu-loan': inside('cooler-off', 'processor-out', 'ours-processor', 'foreign-board', 'start'),
  'board-loan': inside('card-out', 'cooler-off', 'processor-out', 'board-out', 'ours-board', 'foreign-board', 'start'),
  'loaner-second': inside('start'),
  // Bought or sent.
  'card-order': inside('orders', 'card-out', 'start'),
  'supply-order': inside('orders', 'our-supply', 'same-plug', 'start', 'other-leads'),
  'cpu-order': inside('orders', 'cooler-off', 'processor-out', 'foreign-board', 'start'),
  'board-order': inside('orders', 'card-out', 'cooler-off', 'processor-out', 'board-out', 'foreign-board', 'start'),
  'card-send': ['opens', 'card-out', 'sends'],
  'board-send': ['opens', 'card-out', 'board-out', 'sends'],
  // Theirs on our rig.
  'rig-card': ['opens', 'card-out', 'rig-card'],
  'rig-dimms': ['opens', 'rig-dimm'],
  'rig-cpu': ['opens', 'cooler-off', 'processor-out', 'rig-processor'],
  'rig-board': ['opens', 'card-out', 'cooler-off', 'processor-out', 'board-out', 'rig-board'],
  // Firmware.
  'fw-update': ['start-ours', 'clears', 'firmware'],
  'fw-rescue': ['mains', 'clears', 'firmware-rescue'],
  'fw-clip': ['opens', 'board-out', 'clears', 'firmware-clip'],
  // Proof, and the end.
  'put-back': inside('put-back', 'start'),
  settled: ['ends'],
};

/** Asking the owner for one word, under whatever name: `ask-open`, `ask-limit`. */
const isAsking = (step: string) => step.startsWith('ask-');

/** @returns what is done in a step, `undefined` for one that nobody has read for this table yet. */
export const doingsOf = (step: string): readonly Doing[] | undefined =>
  Object.hasOwn(STEP_TABLE, step) ? STEP_TABLE[step] : isAsking(step) ? [] : undefined;
