import type { KeyboardEvent } from 'react';
import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import './press.css';
import './choice.css';

export type Choice<Id extends string = string> = {
  readonly id: Id;
  readonly says: string;
  readonly disabled?: boolean;
};
export type ChoiceKeysProps<Id extends string> = {
  readonly label: string;
  /** Shown above the keys; else it is heard only. */
  readonly labelled?: 'above' | 'heard';
  readonly choices: readonly Choice<Id>[];
  readonly chosen: readonly Id[];
  readonly onChoose: (chosen: readonly Id[]) => void;
  /** `several`: each key by itself. `one`: at most one; pressing it again takes it back. */
  readonly mode?: 'one' | 'several';
  /** Shows 1–9, 0, – and lets those keys press while the group has focus. */
  readonly numbered?: boolean;
  /** Pressing an already chosen key calls this instead of unchoosing it ("how often, since when"). */
  readonly onAgain?: (id: Id) => void;
};

const DIGITS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '0', '–'] as const;

/** A row of keys of which one or several may be chosen, by touch, arrows, or digits. */
export function ChoiceKeys<Id extends string>({
  label,
  labelled = 'heard',
  choices,
  chosen,
  onChoose,
  mode = 'several',
  numbered = false,
  onAgain,
}: ChoiceKeysProps<Id>) {
  const toggle = (id: Id) => {
    const on = chosen.includes(id);
    if (on && onAgain) return onAgain(id);
    if (mode === 'one') return onChoose(on ? [] : [id]);
    onChoose(on ? chosen.filter((other) => other !== id) : [...chosen, id]);
  };
  const byDigit = (event: KeyboardEvent) => {
    if (!numbered || event.ctrlKey || event.altKey || event.metaKey) return;
    const at = DIGITS.findIndex((digit) => digit === event.key || (digit === '–' && event.key === '-'));
    const choice = choices[at];
    if (!choice || choice.disabled) return;
    event.preventDefault();
    toggle(choice.id);
  };
  const keys = (
    // biome-ignore lint/a11y/noStaticElementInteractions: listens for digits on behalf of the keys inside, which hold the focus
    <div onKeyDown={byDigit}>
      <ToggleButtonGroup
        className="k-choices"
        aria-label={label}
        selectionMode={mode === 'one' ? 'single' : 'multiple'}
        selectedKeys={chosen}
        onSelectionChange={(keys) => {
          const pressed = choices.find(({ id }) => keys.has(id) && !chosen.includes(id))?.id;
          const changed = pressed ?? chosen.find((id) => !keys.has(id));
          if (changed !== undefined) toggle(changed);
        }}
      >
        {choices.map((choice, i) => (
          <ToggleButton key={choice.id} id={choice.id} className="k-choice" isDisabled={choice.disabled ?? false}>
            {numbered && DIGITS[i] !== undefined && <i aria-hidden="true">{DIGITS[i]}</i>}
            {choice.says}
          </ToggleButton>
        ))}
      </ToggleButtonGroup>
    </div>
  );
  if (labelled === 'heard') return keys;
  return (
    <>
      <p className="k-field-label" aria-hidden="true">
        {label}
      </p>
      {keys}
    </>
  );
}
