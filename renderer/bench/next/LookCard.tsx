import { type FormEvent, type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { useWords } from '../../kit/text/words.tsx';
import { keyPace } from './keyPace.ts';
import { nextFindings } from './nextFindings.ts';
import type { LookedAt, OutcomeShown } from './stepView.ts';
import './LookCard.css';

export type LookCardProps = {
  readonly places: readonly LookedAt[];
  /** What else may come of it: that it could not be done. */
  readonly others: readonly OutcomeShown[];
  /** It is under way: the hand is here. */
  readonly running: boolean;
  /** All that was found, none of it: a sound machine. */
  readonly onFound: (findings: readonly string[]) => void;
  readonly onOutcome: (id: string) => void;
  readonly onSomethingElse: (() => void) | undefined;
};

/**
 * A look at several places, logged at one press. A digit goes through what can be found at its place, Enter logs, 0 is
 * something else. A label scanned over it that is no tag of ours taps nothing and logs nothing.
 */
export function LookCard({ places, others, running, onFound, onOutcome, onSomethingElse }: LookCardProps) {
  const { t, list } = useWords();
  const [found, setFound] = useState<readonly string[]>([]);
  const form = useRef<HTMLFormElement>(null);
  const pace = useRef(keyPace());
  /** What was tapped before the keys that come in one go. */
  const before = useRef(found);
  useEffect(() => {
    if (running) form.current?.querySelector('input')?.focus();
  }, [running]);
  const all = places.flatMap(({ findings }) => findings);
  const tapped = all.filter(({ id }) => found.includes(id));
  // Two digits can come in one go, held back until it is sure that they are no scan: each goes on from the one before.
  const turn = (id: string, on: boolean) => setFound((now) => (on ? [...now, id] : now.filter((one) => one !== id)));
  const byDigit = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.altKey || event.metaKey || event.repeat) return;
    if (event.key === '0') {
      event.preventDefault();
      return onSomethingElse?.();
    }
    const place = /^[1-9]$/.test(event.key) ? places[Number(event.key) - 1] : undefined;
    if (!place) return;
    event.preventDefault();
    const here = place.findings.map(({ id }) => id);
    const { first, byNoHand } = pace.current.key(event.timeStamp);
    setFound((now) => {
      if (first) before.current = now;
      return byNoHand ? before.current : [...now.filter((id) => !here.includes(id)), ...nextFindings(here, now)];
    });
  };
  const log = (event: FormEvent) => {
    event.preventDefault();
    if (pace.current.endsBurst(event.timeStamp)) return;
    onFound(tapped.map(({ id }) => id));
  };
  return (
    <form ref={form} className="k-look" aria-label={t('kit.step.outcomes')} onSubmit={log} onKeyDown={byDigit}>
      <p className="k-look-digits">{t('kit.step.look-digits', { n: places.length })}</p>
      {places.map((place, at) => (
        <fieldset key={place.id} className="k-look-place">
          <legend>
            <span aria-hidden="true">{at + 1}</span> {place.name}
          </legend>
          {place.findings.map(({ id, says }) => (
            <label key={id}>
              <input
                type="checkbox"
                checked={found.includes(id)}
                onChange={(event) => turn(id, event.target.checked)}
              />
              {says}
            </label>
          ))}
          {!place.findings.some(({ id }) => found.includes(id)) && <span className="k-muted">{place.fine}</span>}
        </fieldset>
      ))}
      <button type="submit" className="k-look-log">
        {tapped.length === 0
          ? t('kit.step.look-nothing')
          : t('kit.step.look-log', { what: list(tapped.map(({ says }) => says)) })}
      </button>
      <div className="k-outcomes-else">
        {others.map(({ id, says }) => (
          <Button key={id} className="k-outcome-else" onPress={() => onOutcome(id)}>
            {says}
          </Button>
        ))}
        {onSomethingElse && (
          <Button className="k-outcome-else" onPress={onSomethingElse}>
            <span aria-hidden="true">0</span> {t('kit.step.something-else')}
          </Button>
        )}
      </div>
    </form>
  );
}
