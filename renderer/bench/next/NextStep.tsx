import { type ReactNode, useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Tag } from '../../../core/custody/part.ts';
import { Icon } from '../../kit/icons.tsx';
import { Ask } from '../../kit/keys/Ask.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { PLAIN_OURS } from '../../kit/mark/look.ts';
import { PartPicture } from '../../kit/mark/PartSwatch.tsx';
import { TagText } from '../../kit/mark/TagText.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useSize } from '../../kit/useSize.ts';
import type { OutcomesProps } from './Outcomes.tsx';
import { ClockRule, StepClock } from './StepClock.tsx';
import type { CautionShown, OtherStep, Running, StepShown } from './stepView.ts';
import { WhatHappened } from './WhatHappened.tsx';
import './NextStep.css';

export type NextStepProps = Pick<OutcomesProps, 'onOutcome' | 'onSomethingElse' | 'back'> & {
  readonly step: StepShown;
  readonly others: readonly OtherStep[];
  readonly onOther: (id: string) => void;
  /** Absent: not started yet. */
  readonly running?: Running;
  readonly now: number;
  readonly onStart: () => void;
  /** Why it cannot be started just now, in words. */
  readonly notYet?: string;
  /** From hands-on to waiting, and back. */
  readonly onPhase: (phase: Running['phase']) => void;
  /** A tap on what to borrow: its bin on the Wall. */
  readonly onBorrow?: (tag: string) => void;
  /** What is said of the step beside its outcome; scrolls with the reasons, so that the outcomes stay in sight. */
  readonly children?: ReactNode;
};

/** What to do next, why, with what care, and what may come of it. While it runs: one reason, the clock, no odds. */
export function NextStep(props: NextStepProps) {
  const { step, others, onOther, running, now, onStart, onPhase, onBorrow, onOutcome, onSomethingElse, back } = props;
  const { children, notYet } = props;
  const { t, number } = useWords();
  const { ref, size } = useSize<HTMLElement>({ width: 396, height: 590 });
  const [othersOpen, setOthersOpen] = useState(false);
  const outcomes = useRef<HTMLDivElement>(null);
  const isRunning = running !== undefined;
  // What is shown changes with these, and is then read from its top.
  useEffect(() => showFromItsTop(outcomes.current), [step.id, isRunning]);
  return (
    <section className="k-next" ref={ref} aria-labelledby="k-next-heading">
      <h2 id="k-next-heading" className="k-next-heading">
        {step.heading}
      </h2>
      <div className="k-next-minutes">
        {running !== undefined ? (
          <StepClock running={running} now={now} />
        ) : (
          <>
            <span>
              <b>{number(step.handsOn)}</b> {t('kit.step.min-hands-on')}
            </span>
            {step.waiting > 0 && (
              <span>
                <b>{number(step.waiting)}</b> {t('kit.step.min-waiting')}
              </span>
            )}
            {size.width > 440 && step.saves !== undefined && step.saves >= 1 && (
              <span className="k-muted">{t('kit.step.saves', { n: Math.round(step.saves) })}</span>
            )}
          </>
        )}
        <span className="k-next-start">
          {running === undefined ? (
            <Key onPress={onStart} {...(notYet === undefined ? {} : { whyNot: notYet })}>
              {t('kit.step.start')}
            </Key>
          ) : (
            <Key onPress={() => onPhase(running.phase === 'hands-on' ? 'waiting' : 'hands-on')}>
              {t(running.phase === 'hands-on' ? 'kit.step.now-waiting' : 'kit.step.hands-back')}
            </Key>
          )}
        </span>
      </div>
      {step.cautions.length > 0 && (
        <div className="k-next-held">
          <Cautions
            key={`${step.id}${running === undefined}`}
            cautions={step.cautions}
            most={running !== undefined ? 1 : size.width > 440 ? 3 : size.height > 640 ? 2 : 1}
          />
        </div>
      )}
      <div className="k-next-middle">
        {running !== undefined && (
          <div className="k-next-running">
            <ClockRule
              running={running}
              planned={running.phase === 'hands-on' ? step.handsOn : step.waiting}
              now={now}
            />
          </div>
        )}
        <p className="k-next-why">
          {running === undefined ? step.why : (step.reason ?? step.why)}{' '}
          {running === undefined && others.length > 0 && (
            <Button className="k-next-others" onPress={() => setOthersOpen(true)}>
              {t('kit.step.others', { n: others.length })}
            </Button>
          )}
        </p>
        {step.borrow && running === undefined && (
          <div className="k-next-borrow">
            <PartPicture name={step.borrow.shape} look={PLAIN_OURS} />
            <div>
              <b>{t('kit.step.borrow')}</b> {step.borrow.tag && <BorrowTag tag={step.borrow.tag} onBorrow={onBorrow} />}
              {step.borrow.what}
              <br />
              {step.borrow.place}. {step.borrow.standing}
            </div>
          </div>
        )}
        {children}
      </div>
      <div className="k-next-outcomes" ref={outcomes}>
        <WhatHappened
          step={step}
          running={running !== undefined}
          onOutcome={onOutcome}
          onSomethingElse={onSomethingElse}
          showOdds={running === undefined}
          {...(back ? { back } : {})}
        />
      </div>
      <Ask
        open={othersOpen}
        title={t('kit.step.others-title')}
        onClose={() => setOthersOpen(false)}
        light
        width={680}
        keys={<Key onPress={() => setOthersOpen(false)}>{t('kit.close')}</Key>}
      >
        <ul className="k-next-list">
          {others.map((other) => (
            <li key={other.id}>
              <div>
                <b>{other.heading}</b>
                <div className="k-muted k-small">
                  {t('kit.step.minutes', { hands: other.handsOn, waiting: other.waiting })}. {other.reason}
                </div>
              </div>
              <Key
                label={t('kit.step.take', { what: other.heading })}
                onPress={() => {
                  setOthersOpen(false);
                  onOther(other.id);
                }}
              >
                {t('kit.step.take-short')}
              </Key>
            </li>
          ))}
        </ul>
      </Ask>
    </section>
  );
}

/** Another step, or the same once it runs, is read from its top; what has the focus stays in sight. */
function showFromItsTop(outcomes: HTMLElement | null): void {
  const focused = outcomes?.contains(document.activeElement) ? document.activeElement : null;
  outcomes?.scrollTo({ top: 0 });
  outcomes?.closest('.k-pane-scrolls')?.scrollTo({ top: 0 });
  focused?.scrollIntoView({ block: 'nearest' });
}

/** The harmful ones first and never out of sight; the rest one press away where there is no room. */
function Cautions({ cautions, most }: { readonly cautions: readonly CautionShown[]; readonly most: number }) {
  const { t } = useWords();
  const [all, setAll] = useState(false);
  const ordered = [...cautions].sort((a, b) => Number(b.harmful ?? false) - Number(a.harmful ?? false));
  const shown = all ? ordered : ordered.filter((caution, i) => i < most || caution.harmful);
  if (cautions.length === 0) return null;
  return (
    <ul className="k-cautions" aria-label={t('kit.step.cautions')}>
      {shown.map((caution, i) => (
        <li key={`${caution.lead ?? ''}${caution.text}`}>
          <Icon name={caution.icon} />
          <span>
            {caution.lead !== undefined && <b>{caution.lead} </b>}
            {caution.harmful && caution.lead === undefined ? <b>{caution.text}</b> : caution.text}{' '}
            {i === shown.length - 1 && shown.length < ordered.length && (
              <Button className="k-next-others" onPress={() => setAll(true)}>
                {t('kit.step.more-cautions', { n: ordered.length - shown.length })}
              </Button>
            )}
          </span>
        </li>
      ))}
    </ul>
  );
}

/** The tag of what to borrow; a tap on it leads to its bin. */
function BorrowTag({ tag, onBorrow }: { readonly tag: Tag; readonly onBorrow: NextStepProps['onBorrow'] }) {
  return (
    <>
      {onBorrow ? (
        <button type="button" className="k-next-tag" onClick={() => onBorrow(tag)}>
          <TagText tag={tag} />
        </button>
      ) : (
        <TagText tag={tag} />
      )}
      ,{' '}
    </>
  );
}
