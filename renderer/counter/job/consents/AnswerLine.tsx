import { useState } from 'react';
import { type ConsentId, OWN_SIGNATURE } from '../../../../core/approval/consent.ts';
import { fill } from '../../../../core/text/wordsFor.ts';
import { TextField } from '../../../kit/fields/TextField.tsx';
import { Key } from '../../../kit/keys/Key.tsx';
import { Problem } from '../../../kit/keys/Problem.tsx';
import { PaperView } from '../../../kit/paper/PaperView.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { useExecute } from '../../../link/useExecute.ts';
import { usePreview } from '../../../link/usePreview.ts';
import { ContentChanged } from '../../fields/ContentChanged.tsx';
import { freshHow, HowFields, howInput, howToSign } from '../../fields/HowFields.tsx';
import { OneOf } from '../../fields/OneOf.tsx';
import { SignUnder } from '../../fields/SignUnder.tsx';
import { isSignedBy, type Signed, signedInput, toSign } from '../../fields/signedInput.ts';
import { consentSays } from '../../terms.ts';
import { answers, type OfJob, ownerPhone } from '../sheetOf.ts';

const YES_NO = ['yes', 'no'] as const;
const DEAD = ['back', 'keep', 'send'] as const;
const DATA = ['back', 'send'] as const;
type Given = (typeof YES_NO)[number] | (typeof DEAD)[number];

const answersOf = (id: ConsentId): readonly Given[] => (id === 'dead' ? DEAD : id === 'data-parts' ? DATA : YES_NO);

/** One line answered later: by phone, in writing or at the counter; what needs a signature of its own is signed here. */
export function AnswerLine({
  id,
  sheet,
  settings,
  onDone,
}: OfJob & { readonly id: ConsentId; readonly onDone: () => void }) {
  const { t, named, moneyShort } = useWords();
  const { execute, problem, refusal, forget } = useExecute();
  const [answer, setAnswer] = useState<Given | null>(null);
  const [how, setHow] = useState(() => freshHow(answers(sheet), ownerPhone(sheet), settings.zone));
  const [mark, setMark] = useState<Signed | null>(null);
  const [about, setAbout] = useState('');
  const alone =
    answer !== null && ((OWN_SIGNATURE.includes(id) && answer === 'yes') || (id === 'data-parts' && answer === 'send'));
  const given = howInput(how, settings.zone);
  const job = sheet.job.id;
  const { limitMinor, feeMinor } = sheet.job;
  const asks = fill(consentSays(id, answer ?? undefined), {
    amount: moneyShort({ minor: id === 'fee' ? feeMinor : limitMinor, currency: settings.currency }),
    days: settings.rules.keptDays,
    name: sheet.owner.mayCollect.value ?? '…',
    part: '…',
    date: '…',
    where: '…',
    work: about.trim() || '…',
    mayHappen: '…',
  });
  const signer = answers(sheet);
  const aloneAs = (signed: ReturnType<typeof toSign>) =>
    alone ? { job, id, answer, about: about.trim() || null, signed } : null;
  const laterAs = (as: typeof given) =>
    answer && !alone && as ? { job, id, answer, name: how.name.trim(), how: as } : null;
  const ofAlone = usePreview('signAlone', aloneAs(toSign(signer)));
  const ofLater = usePreview('answerConsent', laterAs(howToSign(how)));
  const signed = isSignedBy(mark, signer) ? aloneAs(signedInput(mark, signer)) : null;
  const later = laterAs(given);
  const write = async () => {
    const done = signed ? await execute('signAlone', signed) : later && (await execute('answerConsent', later));
    if (done) onDone();
  };
  const ready = signed !== null || later !== null;
  return (
    <div className="counter-block counter-stack">
      <p>{asks}</p>
      <OneOf
        asks={t('counter.consents-later.says')}
        words={id === 'dead' || id === 'data-parts' ? 'dead' : 'yes-no'}
        ids={answersOf(id)}
        chosen={answer}
        onChoose={setAnswer}
      />
      {alone ? (
        <>
          <TextField label={named('counter.alone.about', id)} labelled="above" value={about} onChange={setAbout} />
          {ofAlone.shown?.papers.map((paper) => (
            <PaperView key={paper.kind} paper={paper} />
          ))}
          <SignUnder
            label={t('counter.alone.sign', { what: t(`counter.consents.${id}`) })}
            preview={ofAlone}
            value={mark}
            onChange={setMark}
          />
        </>
      ) : (
        answer !== null && <HowFields how={how} job={job} preview={ofLater} onChange={setHow} />
      )}
      <Key onPress={() => void write()} {...(ready ? {} : { whyNot: t('counter.how.open') })}>
        {t('counter.consents-later.write')}
      </Key>
      {problem && <Problem slim {...problem} />}
      <ContentChanged
        refusal={refusal}
        signed={[mark?.under, how.mark?.under]}
        onClose={() => {
          forget();
          setMark(null);
          setHow({ ...how, mark: null });
        }}
      />
    </div>
  );
}
