import { useId } from 'react';
import './fields.css';

/** A day of the calendar, `YYYY-MM-DD`; empty when none is written. */
export function DayField({
  label,
  value,
  onChange,
}: {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
}) {
  const id = useId();
  return (
    <span className="k-field">
      <label htmlFor={id} className="k-field-label">
        {label}
      </label>
      <input
        id={id}
        type="date"
        className="k-field-input"
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
    </span>
  );
}
