import { TextField as AriaTextField, FieldError, Input, Label, Text, TextArea } from 'react-aria-components';
import { MOST_IN_LINE, MOST_IN_TEXT } from '../../../core/text/lengths.ts';
import { useWords } from '../text/words.tsx';
import './fields.css';

export type TextFieldProps = {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly onLeave?: () => void;
  /** Where the label stands: in the label column, above, or heard only (the row already says it). */
  readonly labelled?: 'beside' | 'above' | 'heard';
  readonly hint?: string;
  /** A muted half-sentence below. */
  readonly says?: string;
  /** What is wrong with what was written, in words. */
  readonly wrong?: string | undefined;
  readonly lines?: number;
  /** Width in characters; else it fills its place. */
  readonly chars?: number;
  readonly type?: 'text' | 'tel' | 'email' | 'url' | 'password';
  readonly autoComplete?: string;
  readonly autoFocus?: boolean;
};

/**
 * Text written on a line of the sheet; several lines when `lines` is given. One that is longer than the service takes stands
 * there as typed and is said to be: nothing of it is cut off.
 */
export function TextField(props: TextFieldProps) {
  const {
    label,
    value,
    onChange,
    onLeave,
    labelled = 'beside',
    hint,
    says,
    wrong: said,
    lines,
    chars,
    type = 'text',
    autoComplete = 'off',
    autoFocus = false,
  } = props;
  const { t, number } = useWords();
  const most = lines === undefined ? MOST_IN_LINE : MOST_IN_TEXT;
  const letters = value.trim().length;
  const wrong = letters > most ? t('kit.too-long', { n: number(letters), most: number(most) }) : said;
  const shared = {
    className: 'k-field-input',
    ...(chars === undefined ? {} : { style: { width: `${chars + 1}ch` } }),
    ...(hint === undefined ? {} : { placeholder: hint }),
  };
  return (
    <AriaTextField
      className={`k-field${chars === undefined ? ' k-field-wide' : ''}${labelled === 'beside' ? ' k-field-beside' : ''}`}
      value={value}
      onChange={onChange}
      type={type}
      autoComplete={autoComplete}
      autoFocus={autoFocus}
      isInvalid={wrong !== undefined}
      {...(onLeave ? { onBlur: onLeave } : {})}
    >
      <Label className={labelled === 'heard' ? 'k-heard' : 'k-field-label'}>{label}</Label>
      {lines === undefined ? <Input {...shared} /> : <TextArea rows={lines} {...shared} />}
      {says !== undefined && (
        <Text slot="description" className="k-field-says">
          {says}
        </Text>
      )}
      <FieldError className="k-field-wrong">{wrong}</FieldError>
    </AriaTextField>
  );
}
