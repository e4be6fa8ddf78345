import { useState } from 'react';
import { stillHere } from '../../../../core/job/home/stillHere.ts';
import type { IdOf } from '../../../catalogue.ts';
import { Key } from '../../../kit/keys/Key.tsx';
import { Problem } from '../../../kit/keys/Problem.tsx';
import { PaperView } from '../../../kit/paper/PaperView.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { useExecute } from '../../../link/useExecute.ts';
import { usePreview } from '../../../link/usePreview.ts';
import { ContentChanged } from '../../fields/ContentChanged.tsx';
import { OneOf } from '../../fields/OneOf.tsx';
import { SignUnder } from '../../fields/SignUnder.tsx';
import { isSignedBy, type Signed, signedInput, toSign } from '../../fields/signedInput.ts';
import { JobRow } from '../JobRow.tsx';
import { overPaid } from '../money/TakePayment.tsx';
import { type OfJob, ownerName } from '../sheetOf.ts';
import { CollectedBy } from './CollectedBy.tsx';
import { type DifferenceSheet, Differences, differencesInput } from './Differences.tsx';
import { LostThings } from './LostThings.tsx';
import { missingWords } from './missingWords.ts';
import { PartsAccounted } from './PartsAccounted.tsx';
import { StillToPay } from './StillToPay.tsx';
import { TickedBack } from './TickedBack.tsx';

/** Hand-over: the taking-in sheet in reverse. What came along is ticked back, ours comes off, parts are accounted for, then the signature. */
export function GoingHome({ sheet, settings }: OfJob) {
  const { t, money } = useWords();
  const { execute, problem, refusal, busy, forget } = useExecute();
  const { job } = sheet;
  const currency = job.terms?.currency ?? settings.currency;
  const over = overPaid(sheet);
  const [back, setBack] = useState<readonly string[]>([]);
  const [off, setOff] = useState<readonly string[]>([]);
  const [differences, setDifferences] = useState<DifferenceSheet>({ chosen: [], says: {} });
  const [collectedBy, setCollectedBy] = useState(ownerName(sheet));
  const [unpaid, setUnpaid] = useState('');
  const [mark, setMark] = useState<Signed | null>(null);
  const along = stillHere(job);
  const openMinor = Math.max(0, sheet.charges.owedMinor - sheet.charges.paidMinor);
  const missing = sheet.missing.filter((one) => one.why !== 'ours-on-machine' || !off.includes(one.thing));
  const open: readonly IdOf<'counter.home.open'>[] = [
    ...(missing.length > 0 ? (['missing'] as const) : []),
    ...(along.some((one) => !back.includes(one.thing)) ? (['back'] as const) : []),
    ...(openMinor > 0 && unpaid.trim() === '' ? (['paid'] as const) : []),
    ...(collectedBy.trim() === '' ? (['collected'] as const) : []),
    ...(isSignedBy(mark, collectedBy) ? [] : (['signature'] as const)),
  ];
  const handOverAs = (signed: ReturnType<typeof toSign>) => ({
    job: job.id,
    collectedBy: collectedBy.trim(),
    returned: along.filter((one) => back.includes(one.thing)).map(({ thing, count }) => ({ thing, count })),
    oursOff: job.shopItemsOn.filter((one) => off.includes(one.thing)).map((one) => ({ ...one })),
    differences: differencesInput(differences),
    ...(openMinor > 0 && unpaid.trim() !== '' && { unpaid: unpaid.trim() }),
    signed,
  });
  const toBeSigned = open.every((one) => one === 'signature');
  const preview = usePreview('handOver', toBeSigned ? handOverAs(toSign(collectedBy)) : null);
  const handOver = async () => {
    if (isSignedBy(mark, collectedBy)) await execute('handOver', handOverAs(signedInput(mark, collectedBy)));
  };
  const said = problem ?? preview.problem;
  return (
    <>
      <JobRow id="home" state={missing.length === 0 ? 'known' : 'open'}>
        {missing.length === 0 ? (
          <p>{t('counter.home.nothing-missing')}</p>
        ) : (
          <ul className="counter-missing" aria-label={t('counter.home.missing')}>
            {missing.map((one) => (
              <li key={JSON.stringify(one)}>{missingWords(one, sheet, t)}</li>
            ))}
          </ul>
        )}
        <TellReady sheet={sheet} settings={settings} />
      </JobRow>
      <JobRow id="back" state={along.every((one) => back.includes(one.thing)) ? 'known' : 'open'}>
        <TickedBack
          label={t('counter.home.back')}
          none={t('counter.job.nothing-along')}
          things={along}
          ticked={back}
          onTick={setBack}
        />
        <LostThings sheet={sheet} />
        {job.shopItemsOn.length > 0 && (
          <TickedBack
            label={t('counter.home.ours-off')}
            none=""
            things={job.shopItemsOn}
            ticked={off}
            onTick={setOff}
          />
        )}
      </JobRow>
      <JobRow id="parts" state="known">
        <PartsAccounted sheet={sheet} />
      </JobRow>
      <JobRow id="differences" state="known">
        <Differences value={differences} onChange={setDifferences} />
      </JobRow>
      <JobRow id="hand-over" state={open.length === 0 ? 'known' : 'open'}>
        <CollectedBy sheet={sheet} name={collectedBy} onName={setCollectedBy} />
        <p>
          <b className="counter-lead">
            {over > 0
              ? t('counter.home.back-to-owner', { amount: money({ minor: over, currency }) })
              : t('counter.home.owed', {
                  amount: money({ minor: openMinor, currency }),
                })}
          </b>
        </p>
        {openMinor > 0 && <StillToPay sheet={sheet} currency={currency} unpaid={unpaid} onUnpaid={setUnpaid} />}
        {preview.shown?.papers.map((paper, at) => (
          <PaperView key={`${paper.kind}-${at}`} paper={paper} />
        ))}
        <SignUnder
          label={t('counter.home.sign', { name: collectedBy })}
          preview={preview}
          value={mark}
          onChange={setMark}
        />
        {said && <Problem {...said} />}
        <ContentChanged
          refusal={refusal}
          signed={[mark?.under]}
          onClose={() => {
            forget();
            setMark(null);
          }}
        />
        <Key
          kind="filled"
          large
          onPress={() => void handOver()}
          {...(open.length === 0 && !busy
            ? {}
            : { whyNot: t('counter.still-open', { what: open.map((id) => t(`counter.home.open.${id}`)).join(', ') }) })}
        >
          {t('counter.home.hand-over')}
        </Key>
      </JobRow>
    </>
  );
}

const TOLD_BY = ['phone', 'mail', 'message'] as const;

function TellReady({ sheet }: OfJob) {
  const { t, dayClock } = useWords();
  const { execute, problem } = useExecute();
  const { job } = sheet;
  return (
    <>
      {job.toldReadyAt !== null && <p>{t('counter.home.told', { at: dayClock(job.toldReadyAt) })}</p>}
      <OneOf
        asks={t('counter.home.tell')}
        words="try.how"
        ids={TOLD_BY}
        chosen={null}
        onChoose={(how) => how && void execute('tellReady', { job: job.id, how })}
      />
      {problem && <Problem slim {...problem} />}
    </>
  );
}
