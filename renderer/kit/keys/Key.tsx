import { type ReactNode, useId } from 'react';
import { Button } from 'react-aria-components';
import './press.css';
import './Key.css';

export type KeyProps = {
  readonly children: ReactNode;
  readonly onPress?: () => void;
  /** `filled` at most once a screen: what one most likely came to do. `quiet` has a dashed edge, `link` is text with a key's height. */
  readonly kind?: 'plain' | 'filled' | 'quiet' | 'link';
  /** Large keys at the foot of a room. */
  readonly large?: boolean;
  readonly wide?: boolean;
  /** The letter or digit that presses it, shown before the words. */
  readonly shortcut?: string;
  /** Set when it cannot be pressed now: says why, in words. */
  readonly whyNot?: string | undefined;
  readonly label?: string;
  readonly submit?: boolean;
  readonly autoFocus?: boolean;
};

/** A key (button): a verb in a frame, at least 40 px high, 48 on the bench. */
export function Key({
  children,
  onPress,
  kind = 'plain',
  large = false,
  wide = false,
  shortcut,
  whyNot,
  label,
  submit = false,
  autoFocus = false,
}: KeyProps) {
  const reason = useId();
  return (
    <span className={`k-key-place${wide ? ' k-key-wide' : ''}`}>
      <Button
        className={`k-key k-key-${kind}${large ? ' k-key-large' : ''}`}
        type={submit ? 'submit' : 'button'}
        isDisabled={whyNot !== undefined}
        autoFocus={autoFocus}
        {...(onPress ? { onPress } : {})}
        {...(label === undefined ? {} : { 'aria-label': label })}
        {...(whyNot === undefined ? {} : { 'aria-describedby': reason })}
      >
        {shortcut !== undefined && (
          <i className="k-key-shortcut" aria-hidden="true">
            {shortcut}
          </i>
        )}
        {children}
      </Button>
      {whyNot !== undefined && (
        <small id={reason} className="k-key-why">
          {whyNot}
        </small>
      )}
    </span>
  );
}
