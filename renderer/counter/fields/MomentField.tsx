import { useId } from 'react';
import '../../kit/fields/fields.css';

/** A day and an hour of the shop's own clock, `YYYY-MM-DDTHH:MM`; empty when nothing is written. */
export function MomentField({
  label,
  value,
  onChange,
  labelled = 'beside',
}: {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly labelled?: 'beside' | 'above' | 'heard';
}) {
  const id = useId();
  return (
    <span className={`k-field${labelled === 'beside' ? ' counter-moment-beside' : ''}`}>
      <label htmlFor={id} className={labelled === 'heard' ? 'k-heard' : 'k-field-label'}>
        {label}
      </label>
      <input
        id={id}
        type="datetime-local"
        className="k-field-input counter-moment"
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
    </span>
  );
}
