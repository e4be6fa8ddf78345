import type { EpochMs } from '../time.ts';
import { says, strongly } from './blocks.ts';
import type { Block, Section, SigningLine } from './content.ts';
import type { SignatureFacts } from './facts.ts';
import type { Format } from './format.ts';
import type { Setting } from './setting.ts';
import { signing } from './sheet.ts';

/** Choices to tick, ticked where the answer is known. */
export const choiceBlock = (
  choices: readonly { readonly text: string; readonly chosen?: boolean }[],
  { words: { common } }: Setting,
): Block => ({
  block: 'choices',
  ticks: { open: common.boxOpen, chosen: common.boxChosen },
  choices: choices.map(({ text, chosen }) => ({ text, chosen: chosen ?? false })),
});

/** Until when an answer is waited for, and what becomes of the machine without one. */
export const untilSection = (
  { validUntil, without }: { readonly validUntil: EpochMs; readonly without: string },
  { words: { common } }: Setting,
  format: Format,
): Section => ({
  label: common.until,
  blocks: says(strongly(`${format.dayTime(validUntil)}. ${common.noAnswer}`, ` ${without}`)),
});

/** That the day told before is open while an answer is waited for. */
export const readySection = (told: EpochMs | undefined, { words: { common } }: Setting, format: Format): Section => ({
  label: common.ready,
  blocks: says(told !== undefined && format.say(common.readyOpen, { day: format.dayTime(told) })),
});

/** The line to sign an answer on, with who gave it and how. */
export const answerSigning = (
  given: SignatureFacts | undefined,
  signed: string,
  setting: Setting,
  format: Format,
): { readonly on: 'last-page'; readonly line: SigningLine } => ({
  on: 'last-page',
  line: signing(given, signed, setting, format, [setting.words.common.answeredLine, setting.words.common.howLine]),
});
