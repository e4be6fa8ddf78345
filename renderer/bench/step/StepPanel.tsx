import { type ReactNode, useRef, useState } from 'react';
import type { JobSheet, TracingSheet, WallSheet } from '../../../core/contract/screens.ts';
import { phaseOf, type Work } from '../../../core/job/work.ts';
import type { Currency } from '../../../core/money/money.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useNow } from '../../kit/useNow.ts';
import { useRoomKeys } from '../../kit/useRoomKeys.ts';
import { InSight } from '../../people/InSight.tsx';
import { useWhoIsHere } from '../../whoIsHere.tsx';
import { CensusKey } from '../deeds/CensusKey.tsx';
import { suspectKinds } from '../ladderOf.ts';
import { isTyped, MeasuredForm } from '../measured/MeasuredForm.tsx';
import { FarView } from '../next/FarView.tsx';
import { NextStep } from '../next/NextStep.tsx';
import type { StepShown } from '../next/stepView.ts';
import { WhatFollows } from '../next/WhatFollows.tsx';
import { ClaimForm } from './ClaimForm.tsx';
import { LockedClock } from './LockedClock.tsx';
import { LogWithout } from './LogWithout.tsx';
import { OwnWord } from './OwnWord.tsx';
import { SendOut } from './SendOut.tsx';
import { SomethingElse } from './SomethingElse.tsx';
import { Stopped } from './Stopped.tsx';
import { handStepInWords, otherInWords, stepInWords } from './stepWords.ts';
import { TakeBackStart } from './TakeBackStart.tsx';
import { asksUse, UseForm } from './UseForm.tsx';
import { useFreshlyShown } from './useFreshlyShown.ts';
import { type Chosen, type Claim, loanerOffered, NOTHING, type StepRun, UNCLAIMED } from './useStep.ts';

export type StepPanelProps = {
  readonly sheet: JobSheet;
  readonly tracing: TracingSheet;
  readonly wall: WallSheet | undefined;
  readonly currency: Currency | undefined;
  readonly run: StepRun;
  readonly tray: string;
  /** The step on offer will not change by itself. */
  readonly stands: boolean;
  readonly about: string;
  readonly settle: ReactNode;
  readonly back: { readonly says: string; readonly onPress: () => void } | undefined;
};

/** A step that was done without its clock, and what came of it: as it stood when it was pressed. */
type Logged = { readonly step: StepShown; readonly came: readonly string[] };

/** The next step, or the one under way, or another chosen by hand; its start, its clock, its outcome. */
export function StepPanel({ sheet, tracing, wall, currency, run, tray, stands, about, settle, back }: StepPanelProps) {
  const words = useWords();
  const { t } = words;
  const now = useNow();
  const [byHand, setByHand] = useState<string | null>(null);
  const byHandNow = useRef(byHand);
  byHandNow.current = byHand;
  const [chosen, setChosen] = useState<Chosen>(NOTHING);
  const [claim, setClaim] = useState<Claim>(UNCLAIMED);
  const [open, setOpen] = useState<'else' | 'far' | null>(null);
  const [logged, setLogged] = useState<Logged | null>(null);
  const [refusedStart, setRefusedStart] = useState(false);
  const { locked, change } = useWhoIsHere();
  useRoomKeys(locked ? {} : { f: () => setOpen(open === 'far' ? null : 'far') });

  const { offer } = tracing;
  const id = run.work?.what ?? byHand ?? offer.next?.step ?? null;
  const offered = [offer.next, ...offer.others].find((one) => one?.step === id) ?? undefined;
  const step =
    id === null ? null : offered ? stepInWords(offered, tracing, wall, words) : handStepInWords(id, tracing, words);
  const freshlyShown = useFreshlyShown(`${id ?? ''} ${run.work?.run ?? ''}`);
  const handling = id === null ? undefined : tracing.handling[id]?.handling;
  const loaner = chosen.loaner ?? loanerOffered(offered, wall);
  const held = offer.notOffered.find((one) => one.step === id && one.why.is === 'gate') !== undefined;
  const take = (next: string | null) => {
    setByHand(next);
    setChosen(NOTHING);
    setClaim(UNCLAIMED);
    setRefusedStart(false);
    run.forget();
  };
  /** A step is over: another one that was taken meanwhile stays taken. */
  const over = () => {
    if (byHand === byHandNow.current) take(null);
  };
  const start = async (ownWord: string | null) => {
    if (id === null || run.busy) return false;
    const done = await run.start(id, chosen, loaner, ownWord);
    setRefusedStart(!done);
    return done;
  };
  const outcome = (ended: string, also: readonly string[] = []) => {
    if (run.busy) return;
    if (!run.work) return step && !freshlyShown() ? setLogged({ step, came: [ended, ...also] }) : undefined;
    void run.finish(ended, { ...claim, also }, chosen).then((done) => {
      if (!done) return;
      over();
      // A locked screen shows what is under way, and that is over.
      if (locked) setOpen(null);
    });
  };
  const elseDialog = open === 'else' && (
    <SomethingElse
      tracing={tracing}
      onTake={(next) => {
        setOpen(null);
        take(next);
      }}
      onClose={() => setOpen(null)}
    />
  );
  if (!step)
    return (
      <>
        <Stopped
          sheet={sheet}
          currency={currency}
          tracing={tracing}
          onTake={take}
          settle={settle}
          onSomethingElse={() => setOpen('else')}
        />
        {elseDialog}
      </>
    );
  const running = run.running;
  const lent = run.work?.loaners.some(({ id: one }) =>
    sheet.parts.some((part) => part.id === one && part.place.at === 'slot'),
  );
  const asksEnd = handling?.putsBack === 'asked' || lent === true;
  return (
    <div className="bench-step">
      {run.busy && running && (
        <p role="status" className="bench-writing k-small">
          {t('bench.writing')}
        </p>
      )}
      {run.problem && (
        <Problem slim {...run.problem}>
          {run.refusal?.refused === 'census-missing' && <CensusKey sheet={sheet} />}
        </Problem>
      )}
      {run.work && <LockedClock job={sheet.job.id} work={run.work} />}
      {run.work && phaseOf(run.work).because === 'consent-missing' && (
        <p role="alert" className="bench-taken-back">
          <b>{t('bench.consents.stopped')}</b>
        </p>
      )}
      {run.work && isPausedElsewhere(run.work) && <p role="status">{t('bench.paused')}</p>}
      {!running && (held || refusedStart) && <OwnWord onStart={(says) => void start(says)} />}
      <NextStep
        step={step}
        others={running ? [] : offer.others.map((one) => otherInWords(one, words))}
        onOther={take}
        now={now}
        {...(running ? { running } : {})}
        onStart={() => void start(null)}
        {...(run.busy && !running ? { notYet: t('bench.writing') } : {})}
        onPhase={run.turn}
        onOutcome={outcome}
        onSomethingElse={() => setOpen('else')}
        {...(back && !running ? { back } : {})}
      >
        {run.work && isTyped(run.work.what) && (
          <MeasuredForm
            key={run.work.run}
            step={run.work.what}
            table={tracing.bench}
            onReadings={(readings) => setClaim({ ...claim, readings })}
            onOutcome={outcome}
          />
        )}
        {run.work && handling?.sends && <SendOut sheet={sheet} work={run.work} sends={handling.sends} />}
        {run.work && <TakeBackStart job={sheet.job.id} run={run.work.run} tray={tray} />}
        {running && <ClaimForm claim={claim} clocked={run.clocked(now)} asksEnd={asksEnd} onClaim={setClaim} />}
        {!running && byHand === null && <WhatFollows job={sheet.job.id} currency={currency} stands={stands} />}
        {handling && asksUse(handling) && (
          <UseForm
            sheet={sheet}
            wall={running ? undefined : wall}
            handling={handling}
            suspects={suspectKinds(tracing)}
            chosen={chosen}
            onChoose={setChosen}
          />
        )}
      </NextStep>
      {byHand !== null && !running && <Key onPress={() => take(null)}>{t('bench.back-to-offer')}</Key>}
      <Key kind="link" onPress={() => setOpen('far')}>
        {t('bench.far')}
      </Key>
      {elseDialog}
      {logged !== null && (
        <LogWithout
          step={logged.step}
          came={logged.came}
          onLog={(said) => {
            const [ended = '', ...also] = logged.came;
            setLogged(null);
            void run.log(logged.step.id, ended, { ...claim, ...said, also }, chosen, loaner).then((done) => {
              setRefusedStart(!done);
              if (done) over();
            });
          }}
          onClose={() => setLogged(null)}
        />
      )}
      {open === 'far' && (
        <InSight held={run.work !== null}>
          <FarView
            tag={sheet.machine.tag}
            about={about}
            step={step}
            {...(running ? { running } : {})}
            now={now}
            onOutcome={outcome}
            onSomethingElse={() => setOpen('else')}
            onLeave={() => setOpen(null)}
            onUnlock={locked ? () => change() : undefined}
          />
        </InSight>
      )}
    </div>
  );
}

/** Hands are at another machine; not where the clock stopped with the screen. */
const isPausedElsewhere = (work: Work): boolean => {
  const { to, because } = phaseOf(work);
  return to === 'paused' && because === undefined;
};
