import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import type { Tag } from '../../../core/custody/part.ts';
import { MINUTE_MS } from '../../../core/time.ts';
import { Icon } from '../../kit/icons.tsx';
import { TagText } from '../../kit/mark/TagText.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { keepFocus } from './keepFocus.ts';
import { ClockRule, StepClock } from './StepClock.tsx';
import type { Running, StepShown } from './stepView.ts';
import { WhatHappened } from './WhatHappened.tsx';
import './FarView.css';

export type FarViewProps = {
  readonly tag: Tag | null;
  /** "told dark, seen restarting". */
  readonly about: string;
  readonly step: StepShown;
  readonly running?: Running;
  readonly now: number;
  readonly onOutcome: (id: string, also?: readonly string[]) => void;
  readonly onSomethingElse: () => void;
  /** F, Escape, or a long press on the heading. */
  readonly onLeave: () => void;
  /** The screen is locked: the step takes its outcome and nothing else; a press here lets somebody in. */
  readonly onUnlock?: (() => void) | undefined;
};

const DIMS_AFTER = 5 * MINUTE_MS;
const LONG_PRESS = 600;

/** One step, one reason, one caution, one clock, its outcomes: read from two metres, hit with an elbow. No odds. */
export function FarView(props: FarViewProps) {
  const { tag, about, step, running, now, onOutcome, onSomethingElse, onLeave, onUnlock } = props;
  const { t, clock } = useWords();
  const dialog = useRef<HTMLDivElement>(null);
  const press = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const [touched, setTouched] = useState(now);
  useEffect(() => {
    const before = document.activeElement;
    dialog.current?.focus();
    return () => (before instanceof HTMLElement ? before.focus() : undefined);
  }, []);
  const caution = step.cautions.find((one) => one.harmful) ?? step.cautions[0];
  const dim = running === undefined && now - touched > DIMS_AFTER;
  const keys = (event: KeyboardEvent<HTMLElement>) => {
    setTouched(now);
    keepFocus(event);
    if (onUnlock) return;
    if (event.key === 'Escape' || event.key === 'f' || event.key === 'F') {
      event.preventDefault();
      onLeave();
    }
  };
  return (
    <div
      ref={dialog}
      className={dim ? 'k-far k-far-dim' : 'k-far'}
      role="dialog"
      aria-modal="true"
      aria-label={t('kit.far.name', { what: step.heading })}
      tabIndex={-1}
      onKeyDown={keys}
      onPointerMove={() => setTouched(now)}
      onPointerDown={() => setTouched(now)}
    >
      <div className="k-far-top">
        {tag && <TagText tag={tag} />} <span className="k-muted">{about}</span>{' '}
        <span className="k-far-clock">{clock(now)}</span>
      </div>
      <h2
        className={step.heading.length > 22 ? 'k-far-heading k-far-long' : 'k-far-heading'}
        onPointerDown={() => {
          if (!onUnlock) press.current = setTimeout(onLeave, LONG_PRESS);
        }}
        onPointerUp={() => clearTimeout(press.current)}
        onPointerLeave={() => clearTimeout(press.current)}
      >
        {step.heading}
      </h2>
      <div className="k-far-middle">
        <div className="k-far-says">
          <p>{step.reason ?? step.why}</p>
          {caution && (
            <p className="k-far-caution">
              <Icon name={caution.icon} size={56} />
              <b>{caution.lead ?? caution.text}</b>
            </p>
          )}
        </div>
        {running !== undefined && <StepClock running={running} now={now} />}
      </div>
      {running !== undefined && <ClockRule running={running} planned={step.handsOn} now={now} large />}
      {onUnlock && <p role="status">{t('people.far.locked')}</p>}
      <WhatHappened
        step={step}
        running={running !== undefined}
        onOutcome={onOutcome}
        onSomethingElse={onUnlock ? undefined : onSomethingElse}
        showOdds={false}
        far
      />
      <button type="button" className="k-far-leave" onClick={onUnlock ?? onLeave}>
        {t(onUnlock ? 'people.far.unlock' : 'kit.far.leave')}
      </button>
    </div>
  );
}
