import type { ConsentAnswer, ConsentId } from '../../../core/approval/consent.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { YesNo } from '../../kit/keys/YesNo.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { OneOf } from '../fields/OneOf.tsx';
import { SignUnder } from '../fields/SignUnder.tsx';
import { isSignedBy } from '../fields/signedInput.ts';
import { Row } from './Row.tsx';
import { signerOf, type TakingInSheet } from './sheet.ts';
import { useTakingIn } from './sheetContext.tsx';
import { signedAlone } from './signedAlone.ts';

/** Lines under the one signature, in the order they are asked; `dead` and `data-parts` have answers of their own. */
const SHARED = [
  'open',
  'own-parts-in',
  'start-own',
  'read',
  'write',
  'copy',
  'no-backup',
  'limit',
  'fee',
  'offer-lesser',
  'photos',
  'keep-days',
  'warranty-said',
  'who-collects',
] as const satisfies readonly ConsentId[];

/** Yes or no, two equal keys each, none chosen beforehand; unanswered is no. */
export function ConsentRow() {
  const { t } = useWords();
  const { sheet, write } = useTakingIn();
  const answer = (id: ConsentId, given: ConsentAnswer | null) => write({ answers: answered(sheet, id, given) });
  return (
    <Row id="consents" known={SHARED.every((id) => sheet.answers[id] !== undefined)}>
      {SHARED.map((id) => (
        <YesNo
          key={id}
          asks={t(`counter.consents.${id}`)}
          answer={yesOrNo(sheet.answers[id])}
          onAnswer={(given) => answer(id, given)}
        />
      ))}
      <OneOf
        asks={t('counter.consents.dead')}
        words="dead"
        ids={['back', 'keep', 'send'] as const}
        chosen={partAnswer(sheet.answers.dead)}
        onChoose={(given) => answer('dead', given)}
      />
      <OneOf
        asks={t('counter.consents.data-parts')}
        words="dead"
        ids={['back', 'send'] as const}
        chosen={
          partAnswer(sheet.answers['data-parts']) === 'send'
            ? 'send'
            : partAnswer(sheet.answers['data-parts']) === 'back'
              ? 'back'
              : null
        }
        onChoose={(given) => answer('data-parts', given)}
      />
    </Row>
  );
}

const ALONE = ['film', 'publish', 'destroy', 'risk', 'risk-key'] as const satisfies readonly ConsentId[];

/** Lines apart from the rest, each with a signature of its own; a no changes nothing else on the sheet. */
export function OwnSignatureRow() {
  const { t } = useWords();
  const { sheet, write, marks, sign } = useTakingIn();
  const shown = ALONE.filter((id) => id !== 'publish' || sheet.answers.film === 'yes');
  const toSign = signedAlone(sheet);
  return (
    <Row id="alone" known={shown.every((id) => sheet.answers[id] !== undefined) && toSign.every((id) => marks[id])}>
      {shown.map((id) => (
        <div key={id}>
          <YesNo
            asks={t(`counter.consents.${id}`)}
            note={t('counter.alone.note')}
            answer={yesOrNo(sheet.answers[id])}
            onAnswer={(given) => {
              write({ answers: answered(sheet, id, given) });
              if (given !== 'yes') sign(id, null);
            }}
          />
          {id === 'risk' && sheet.answers.risk === 'yes' && (
            <TextField
              label={t('counter.alone.risk-about')}
              labelled="above"
              value={sheet.riskAbout}
              onChange={(riskAbout) => write({ riskAbout })}
              lines={1}
            />
          )}
          {sheet.answers[id] === 'yes' && <Alone id={id} />}
        </div>
      ))}
      {sheet.answers['data-parts'] === 'send' && (
        <div>
          <p className="counter-asks">{t('counter.alone.data-parts')}</p>
          <Alone id="data-parts" />
        </div>
      )}
    </Row>
  );
}

function Alone({ id }: { readonly id: ConsentId }) {
  const { t } = useWords();
  const { marks, sign, papers } = useTakingIn();
  return (
    <SignUnder
      label={t('counter.alone.sign', { what: t(`counter.consents.${id}`) })}
      preview={papers}
      value={marks[id] ?? null}
      onChange={(mark) => sign(id, mark)}
    />
  );
}

/** The one signature under all shared lines; beside the sheet, or on the paper turned to the owner. */
export function SignatureRow() {
  const { t } = useWords();
  const { sheet, marks, sign, papers } = useTakingIn();
  const signer = signerOf(sheet.owner);
  return (
    <Row id="signature" known={isSignedBy(marks.sheet, signer)}>
      <SignUnder
        label={signer === '' ? t('counter.sign.label') : t('counter.sign.label-of', { name: signer })}
        preview={papers}
        value={marks.sheet ?? null}
        onChange={(mark) => sign('sheet', mark)}
      />
    </Row>
  );
}

const yesOrNo = (answer: ConsentAnswer | undefined): 'yes' | 'no' | null =>
  answer === 'yes' || answer === 'no' ? answer : null;

const partAnswer = (answer: ConsentAnswer | undefined): 'back' | 'keep' | 'send' | null =>
  answer === 'back' || answer === 'keep' || answer === 'send' ? answer : null;

function answered(sheet: TakingInSheet, id: ConsentId, given: ConsentAnswer | null): TakingInSheet['answers'] {
  const { [id]: _, ...others } = sheet.answers;
  return given === null ? others : { ...others, [id]: given };
}
