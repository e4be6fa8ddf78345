import type { OpenFrom } from '../../../core/job/shop.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { hoursFrom, hoursText } from './hoursText.ts';

/** Monday first. */
const WEEK = [1, 2, 3, 4, 5, 6, 0] as const;

/** The hours of a week as they are being written, a text for each day. */
export type WeekTexts = readonly string[];

export const weekTexts = (open: readonly OpenFrom[]): WeekTexts => WEEK.map((day) => hoursText(open, day));

/** The hours of a week; null while one of its days cannot be read. */
export function weekFrom(texts: WeekTexts): readonly OpenFrom[] | null {
  const days = texts.map((text, at) => hoursFrom(text, WEEK[at] ?? 0));
  return days.includes(null) ? null : days.flatMap((one) => one ?? []);
}

/** A line for each weekday. */
export function WeekHours({
  texts,
  onChange,
}: {
  readonly texts: WeekTexts;
  readonly onChange: (texts: WeekTexts) => void;
}) {
  const { t, weekday } = useWords();
  return WEEK.map((day, at) => {
    const text = texts[at] ?? '';
    return (
      <TextField
        key={day}
        label={weekday(day)}
        value={text}
        onChange={(next) => onChange(texts.map((one, other) => (other === at ? next : one)))}
        wrong={hoursFrom(text, day) === null ? t('reckoning.settings.hours-wrong') : undefined}
        hint={t('reckoning.settings.shut')}
      />
    );
  });
}
