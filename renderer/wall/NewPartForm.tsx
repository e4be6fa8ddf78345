import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { EQUIPMENT_KINDS, PART_KINDS, type ThingKind } from '../../core/custody/part.ts';
import { parseTag } from '../../core/custody/tag.ts';
import { typedAttributes } from '../../core/fit/typedFact.ts';
import { minorDigits } from '../../core/money/minorDigits.ts';
import { NumberField } from '../kit/fields/NumberField.tsx';
import { TextField } from '../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../kit/keys/ChoiceKeys.tsx';
import { Key } from '../kit/keys/Key.tsx';
import { Problem } from '../kit/keys/Problem.tsx';
import { useWords } from '../kit/text/words.tsx';
import { shopRead } from '../link/reads.ts';
import { useExecute } from '../link/useExecute.ts';
import { FactFields } from '../parts/FactFields.tsx';
import { knownFacts, type TypedFacts } from '../parts/writtenFacts.ts';

const OFFERED: readonly ThingKind[] = [
  ...PART_KINDS.filter((kind) => kind !== 'case' && kind !== 'front-panel'),
  ...EQUIPMENT_KINDS.filter((kind) => kind !== 'rig'),
];
const FIRST = ['unproved', 'trial-grade'] as const;

type NewPartProps = {
  /** A tag that hangs on nothing yet, as typed or scanned. */
  readonly tag: string;
  readonly onTag: (tag: string) => void;
  readonly onDone: () => void;
};

/** A part or a piece of equipment comes onto the wall: what it is, its bin, its price; a pre-printed tag is bound, else one is issued. */
export function NewPartForm({ tag, onTag, onDone }: NewPartProps) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const [kind, setKind] = useState<ThingKind>('dimm');
  const [name, setName] = useState('');
  const [bin, setBin] = useState('');
  const [first, setFirst] = useState<(typeof FIRST)[number]>('unproved');
  const [facts, setFacts] = useState<TypedFacts>({});
  const [price, setPrice] = useState<number | null>(null);
  const currency = useQuery(shopRead()).data?.settings?.currency;
  const digits = currency === undefined ? 2 : minorDigits(currency);
  const wrongTag = tag !== '' && parseTag(tag) === undefined;
  const add = async () => {
    const done = await execute('knowPart', {
      tag: parseTag(tag) ?? null,
      kind,
      name,
      attributes: knownFacts(facts),
      standing:
        first === 'unproved' ? { is: 'unproved', why: t('wall.just-came') } : { is: 'trial-grade', scopes: ['starts'] },
      place: { at: 'bin', bin },
      valueMinor: Math.round((price ?? 0) * 10 ** digits),
    });
    if (done) onDone();
  };
  return (
    <form
      className="wall-deeds"
      aria-label={t('wall.add')}
      onSubmit={(event) => {
        event.preventDefault();
        void add();
      }}
    >
      <ChoiceKeys
        label={t('wall.kind')}
        mode="one"
        choices={OFFERED.map((id) => ({ id, says: t(`wall.kinds.${id}`) }))}
        chosen={[kind]}
        onChoose={([next]) => {
          setKind(OFFERED.find((one) => one === next) ?? kind);
          setFacts({});
        }}
      />
      <TextField label={t('wall.name')} labelled="above" value={name} onChange={setName} />
      {typedAttributes(kind).length > 0 && (
        <details className="wall-path">
          <summary>{t('wall.facts.title')}</summary>
          <FactFields key={kind} kind={kind} facts={facts} onChange={setFacts} />
        </details>
      )}
      <TextField label={t('wall.bin')} labelled="above" value={bin} onChange={setBin} />
      <TextField
        label={t('wall.tag')}
        labelled="above"
        value={tag}
        onChange={onTag}
        wrong={wrongTag ? t('wall.tag-wrong') : undefined}
      />
      <NumberField
        label={t('wall.price')}
        labelled="above"
        value={price}
        onChange={setPrice}
        least={0}
        digits={digits}
      />
      <ChoiceKeys
        label={t('wall.first')}
        labelled="above"
        mode="one"
        choices={FIRST.map((id) => ({ id, says: t(`wall.first-is.${id}`) }))}
        chosen={[first]}
        onChoose={([id]) => setFirst(FIRST.find((one) => one === id) ?? first)}
      />
      <Key submit {...(name && bin && !wrongTag ? {} : { whyNot: t('wall.name-and-bin') })}>
        {t('wall.put-up')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </form>
  );
}
