import { Fragment } from 'react';
import type { PartMark as PaperMark, Text } from '../../../core/papers/content.ts';
import type { MarkLook } from '../mark/look.ts';
import { PartSwatch } from '../mark/PartSwatch.tsx';

/** Words of a paper: plain, semibold, or a tag in its groups. */
export function PaperText({ text }: { readonly text: Text }) {
  if (typeof text === 'string') return <>{text}</>;
  return (
    <>
      {text.map((run, i) => {
        const key = `${i}${run.text}`;
        if (run.tag)
          return (
            <span key={key} className="k-paper-tag">
              {run.text}
            </span>
          );
        return run.strong ? <b key={key}>{run.text}</b> : <Fragment key={key}>{run.text}</Fragment>;
      })}
    </>
  );
}

/** Whose part, in one ink, with its words for those who cannot see it. */
export function PaperMarkView({ mark, id }: { readonly mark: PaperMark; readonly id: string }) {
  const look: MarkLook =
    mark.whose === 'nobody'
      ? { is: 'empty' }
      : mark.whose === 'unknown'
        ? { is: 'unknown' }
        : { is: 'part', whose: mark.whose, standing: mark.state ?? 'plain', known: true };
  return (
    <span className="k-paper-mark">
      <PartSwatch look={look} id={id} width={30} height={15} />
      <span className="k-heard">{mark.says}</span>
    </span>
  );
}
