import { useId } from 'react';
import './fields.css';

type DateFieldProps = {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** What is wrong with the day that was written, in words. */
  readonly wrong?: string | undefined;
};

/** A day of the calendar, `YYYY-MM-DD`; empty when none is written. */
export const DayField = (props: DateFieldProps) => <DateField {...props} type="date" />;

/** A day and an hour of the shop's own clock, `YYYY-MM-DDTHH:MM`; empty when nothing is written. */
export const MomentField = (props: DateFieldProps) => <DateField {...props} type="datetime-local" />;

function DateField({
  label,
  value,
  onChange,
  wrong,
  type,
}: DateFieldProps & { readonly type: 'date' | 'datetime-local' }) {
  const id = useId();
  return (
    <span className="k-field k-field-date">
      <label htmlFor={id} className="k-field-label">
        {label}
      </label>
      <input
        id={id}
        type={type}
        className="k-field-input"
        value={value}
        onChange={(event) => onChange(event.target.value)}
        {...(wrong === undefined ? {} : { 'aria-invalid': true, 'aria-describedby': `${id}-wrong` })}
      />
      {wrong !== undefined && (
        <span id={`${id}-wrong`} className="k-field-wrong">
          {wrong}
        </span>
      )}
    </span>
  );
}
