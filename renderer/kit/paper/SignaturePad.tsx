import { type PointerEvent, useId, useRef, useState } from 'react';
import type { Strokes } from '../../../core/approval/signature.ts';
import { TextField } from '../fields/TextField.tsx';
import { Key } from '../keys/Key.tsx';
import { useWords } from '../text/words.tsx';
import { strokePath } from './strokePath.ts';
import './SignaturePad.css';

/** Drawn by hand, or the name typed where no hand can draw; the paper says which. */
export type SignatureMark =
  | { readonly by: 'hand'; readonly strokes: Strokes }
  | { readonly by: 'typed'; readonly name: string };
export type SignaturePadProps = {
  /** What is signed: "the answers above". */
  readonly label: string;
  readonly value: SignatureMark | null;
  readonly onChange: (value: SignatureMark | null) => void;
  /** What is signed is being made: for so long nothing can be written or drawn. */
  readonly held?: boolean;
};

const SIZE = { width: 600, height: 180 } as const;

/** A line to sign on with pen, finger or mouse; kept as strokes, not as a picture. By keyboard: the typed name, said to be typed. */
export function SignaturePad({ label, value, onChange, held = false }: SignaturePadProps) {
  const { t } = useWords();
  const hint = useId();
  const [typing, setTyping] = useState(value?.by === 'typed');
  const [live, setLive] = useState<readonly (readonly [number, number, number])[] | null>(null);
  const began = useRef<number | null>(null);
  const strokes = value?.by === 'hand' ? value.strokes.strokes : [];

  const point = (event: PointerEvent<SVGSVGElement>): readonly [number, number, number] => {
    const box = event.currentTarget.getBoundingClientRect();
    began.current ??= event.timeStamp;
    const round = (n: number) => Math.round(n * 10) / 10;
    return [
      round(((event.clientX - box.left) / box.width) * SIZE.width),
      round(((event.clientY - box.top) / box.height) * SIZE.height),
      Math.round(event.timeStamp - began.current),
    ];
  };
  const end = () => {
    if (live === null) return;
    onChange({ by: 'hand', strokes: { ...SIZE, strokes: [...strokes, live] } });
    setLive(null);
  };
  const clear = () => {
    began.current = null;
    setLive(null);
    onChange(null);
  };

  return (
    <div className="k-sign">
      {typing ? (
        <fieldset className="k-sign-typed" disabled={held}>
          <TextField
            label={t('kit.sign.typed-name')}
            labelled="above"
            says={t('kit.sign.typed-says')}
            value={value?.by === 'typed' ? value.name : ''}
            onChange={(name) => onChange(name.trim() === '' ? null : { by: 'typed', name })}
            autoComplete="name"
          />
        </fieldset>
      ) : (
        <svg
          viewBox={`0 0 ${SIZE.width} ${SIZE.height}`}
          className="k-sign-field"
          role="img"
          aria-label={t(value === null ? 'kit.sign.empty' : 'kit.sign.signed', { what: label })}
          aria-describedby={hint}
          onPointerDown={(event) => {
            if (event.button !== 0 || held) return;
            event.currentTarget.setPointerCapture(event.pointerId);
            setLive([point(event)]);
          }}
          onPointerMove={(event) => {
            if (live !== null) setLive([...live, point(event)]);
          }}
          onPointerUp={end}
          onPointerCancel={end}
        >
          <path d="M24 140H576" className="k-sign-line" />
          {[...strokes, ...(live ? [live] : [])].map((stroke) => (
            <path key={`${stroke[0]?.join()}`} d={strokePath(stroke)} className="k-sign-ink" />
          ))}
        </svg>
      )}
      <p id={hint} className="k-sign-hint">
        {label}
      </p>
      <div className="k-sign-keys">
        <Key
          onPress={() => {
            clear();
            setTyping(!typing);
          }}
        >
          {t(typing ? 'kit.sign.by-hand' : 'kit.sign.by-keys')}
        </Key>
        {value !== null && <Key onPress={clear}>{t('kit.sign.again')}</Key>}
      </div>
    </div>
  );
}
