import { useState } from 'react';
import fit from '../../assets/words/en/fit.json';
import type { ThingKind } from '../../core/custody/part.ts';
import { type AttributeName, attributeRule, unitOf } from '../../core/fit/attributes.ts';
import { moduleName, parseModuleName } from '../../core/fit/moduleName.ts';
import { type Typed, typedAttributes } from '../../core/fit/typedFact.ts';
import { NumberField } from '../kit/fields/NumberField.tsx';
import { TextField } from '../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../kit/keys/ChoiceKeys.tsx';
import { YesNo } from '../kit/keys/YesNo.tsx';
import { useWords } from '../kit/text/words.tsx';
import type { TypedFacts } from './writtenFacts.ts';
import './parts.css';

/** A fact's values in words; where one text says them all it is no choice of this form. */
const VALUES: Readonly<Record<string, string | Readonly<Record<string, string>>>> = fit.values;

function valueSays(name: AttributeName, id: string): string {
  const says = VALUES[name];
  return (typeof says === 'object' && says[id]) || id;
}

/** A bare number of things has no unit to show. */
const COUNT = 'count';

type FactFieldsProps = {
  readonly kind: ThingKind;
  readonly facts: TypedFacts;
  readonly onChange: (facts: TypedFacts) => void;
};

/** A field for each fact that this kind of part can have, with its unit; an empty field is a fact not known. */
export function FactFields({ kind, facts, onChange }: FactFieldsProps) {
  const { t } = useWords();
  return (
    <div className="parts-facts">
      <p className="k-muted">{t('wall.facts.how')}</p>
      {kind === 'dimm' && <OnTheModule facts={facts} onChange={onChange} />}
      {typedAttributes(kind).map((name) => (
        <FactField
          key={name}
          name={name}
          kind={kind}
          value={facts[name] ?? null}
          onChange={(value) => onChange({ ...facts, [name]: value })}
        />
      ))}
    </div>
  );
}

/** What stands on a memory module says its kind and its speed at once. */
function OnTheModule({ facts, onChange }: Omit<FactFieldsProps, 'kind'>) {
  const { t } = useWords();
  const [text, setText] = useState('');
  const found = parseModuleName(text);
  const read = (now: string) => {
    setText(now);
    const named = parseModuleName(now);
    if (named) onChange({ ...facts, memory: named.memory, 'memory-speed': named.speed });
  };
  return (
    <TextField
      label={t('wall.facts.on-module')}
      labelled="above"
      value={text}
      onChange={read}
      {...(found
        ? { says: t('wall.facts.read', { ...found, name: moduleName(found) }) }
        : text !== '' && { says: t('wall.facts.not-read') })}
    />
  );
}

function FactField({
  name,
  kind,
  value,
  onChange,
}: {
  readonly name: AttributeName;
  readonly kind: ThingKind;
  readonly value: Typed;
  readonly onChange: (value: Typed) => void;
}) {
  const { t, list } = useWords();
  const rule = attributeRule(name);
  const unit = unitOf(name, kind);
  const label = t(`fits.attributes.${name}`);
  switch (rule.type) {
    case 'number':
      return (
        <NumberField
          label={label}
          labelled="above"
          value={typeof value === 'number' ? value : null}
          onChange={onChange}
          least={0}
          digits={3}
          {...(unit !== undefined && unit !== COUNT && { unit })}
        />
      );
    case 'yes-no':
      return (
        <YesNo
          asks={label}
          answer={typeof value === 'boolean' ? (value ? 'yes' : 'no') : null}
          onAnswer={(answer) => onChange(answer === null ? null : answer === 'yes')}
        />
      );
    case 'one-of':
      return (
        <div>
          <ChoiceKeys
            label={label}
            labelled="above"
            mode="one"
            choices={(rule.order ?? []).flat().map((id) => ({ id, says: valueSays(name, id) }))}
            chosen={typeof value === 'string' ? [value] : []}
            onChoose={([id]) => onChange(id ?? null)}
          />
        </div>
      );
    default:
      return (
        <TextField
          label={label}
          labelled="above"
          value={typeof value === 'string' ? value : ''}
          onChange={onChange}
          {...(rule.spelt && { says: t('wall.facts.such-as', { words: list(rule.spelt) }) })}
        />
      );
  }
}
