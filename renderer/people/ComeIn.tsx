import { type FormEvent, useState } from 'react';
import type { HereSheet } from '../../core/contract/hereSheet.ts';
import { parseTag } from '../../core/custody/tag.ts';
import type { StaffId } from '../../core/ids.ts';
import { ChoiceKeys } from '../kit/keys/ChoiceKeys.tsx';
import { Key } from '../kit/keys/Key.tsx';
import { Problem, type ProblemWords } from '../kit/keys/Problem.tsx';
import { useScan } from '../kit/scan/scan.ts';
import { useWords } from '../kit/text/words.tsx';
import { wordsOfError } from '../link/refusalWords.ts';
import { service } from '../link/service.ts';
import { ofBadge } from './ofBadge.ts';
import { PinField } from './PinField.tsx';
import { WayBack } from './WayBack.tsx';
import './people.css';

export type ComeInProps = {
  readonly here: HereSheet;
  /** Who is taken to come: from a badge, or whoever was here last. */
  readonly first: StaffId | null;
  readonly scanSign: string | undefined;
  readonly onIn: (who: StaffId) => Promise<void>;
  /** Goes back to whoever is here; left out where nobody may. */
  readonly onBack?: () => void;
};

const isBadge = (code: string): boolean => parseTag(code) !== undefined;

/** Somebody comes to this screen: says who, by a key or by scanning their badge, and types their PIN. */
export function ComeIn({ here, first, scanSign, onIn, onBack }: ComeInProps) {
  const { t } = useWords();
  const [who, setWho] = useState(first);
  const [pin, setPin] = useState('');
  const [busy, setBusy] = useState(false);
  const [byWords, setByWords] = useState(false);
  const [problem, setProblem] = useState<ProblemWords | null>(null);
  useScan({ check: isBadge, ...(scanSign !== undefined && { prefix: scanSign }) }, (code) => {
    const person = ofBadge(here.people, code);
    setProblem(person ? null : { says: t('people.badge-unknown', { tag: code }) });
    if (!person) return;
    setWho(person.id);
    setPin('');
  });
  const comeIn = async (event: FormEvent) => {
    event.preventDefault();
    if (who === null || busy) return;
    setBusy(true);
    try {
      await service.enter({ who, pin });
      await onIn(who);
    } catch (error) {
      setProblem(wordsOfError(error));
    } finally {
      setPin('');
      setBusy(false);
    }
  };
  if (byWords) return <WayBack people={here.people} onIn={onIn} onBack={() => setByWords(false)} />;
  return (
    <main className="who-is-here">
      <h1>{t(here.locked ? 'people.locked' : 'app.who')}</h1>
      <ChoiceKeys
        label={t('people.who')}
        mode="one"
        choices={here.people.map(({ id, name }) => ({ id, says: name }))}
        chosen={who === null ? [] : [who]}
        onChoose={([id]) => {
          setWho(here.people.find((one) => one.id === id)?.id ?? null);
          setProblem(null);
        }}
      />
      <form onSubmit={(event) => void comeIn(event)}>
        <PinField
          key={who}
          label={t('people.pin')}
          value={pin}
          onChange={setPin}
          says={t('people.or-badge')}
          autoFocus
        />
        <Key kind="filled" large submit {...(who === null ? { whyNot: t('people.choose-first') } : {})}>
          {t('people.come-in')}
        </Key>
      </form>
      {busy && <p role="status">{t('people.looking')}</p>}
      {problem && <Problem {...problem} />}
      <div className="people-row">
        {onBack && (
          <Key kind="link" onPress={onBack}>
            {t('people.stay')}
          </Key>
        )}
        {here.hasWords && (
          <Key kind="link" onPress={() => setByWords(true)}>
            {t('people.by-words')}
          </Key>
        )}
      </div>
    </main>
  );
}
