import type { Block, ComparisonBlock, SignatureBlock, SigningLine } from '../../../core/papers/content.ts';
import { PaperRuler } from './PaperRuler.tsx';
import { PaperMarkView, PaperText } from './PaperText.tsx';
import { strokePath } from './strokePath.ts';

/** One block of a paper, in the semantics its kind has: table, list, facts, boxes to tick. */
export function PaperBlock({ block }: { readonly block: Block }) {
  switch (block.block) {
    case 'paragraph':
      return (
        <p className={block.size === 'note' ? 'k-paper-note' : undefined}>
          <PaperText text={block.text} />
        </p>
      );
    case 'list':
      return (
        <ul className="k-paper-list">
          {block.items.map((item) => (
            <li key={JSON.stringify(item)}>
              <PaperText text={item} />
            </li>
          ))}
        </ul>
      );
    case 'facts':
      return (
        <dl className="k-paper-facts">
          {block.rows.map((row) => (
            <div key={row.name}>
              <dt>{row.name}</dt>
              <dd>
                <PaperText text={row.value} />
              </dd>
            </div>
          ))}
        </dl>
      );
    case 'table':
      return (
        <table className={block.small ? 'k-paper-table k-paper-small' : 'k-paper-table'}>
          <caption className="k-heard">{block.summary}</caption>
          <thead>
            <tr>
              {block.columns.map((column) => (
                <th key={column.head} scope="col" className={column.align === 'right' ? 'k-paper-right' : undefined}>
                  {column.head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {block.rows.map((row) =>
              row.over ? (
                <tr key={JSON.stringify(row.cells)} className="k-paper-strong">
                  <th scope="colgroup" colSpan={block.columns.length}>
                    <PaperText text={row.cells[0] ?? ''} />
                  </th>
                </tr>
              ) : (
                <tr key={JSON.stringify(row.cells)} className={row.strong ? 'k-paper-strong' : undefined}>
                  {row.cells.map((cell, i) => (
                    <td
                      key={`${block.columns[i]?.head}${i}`}
                      className={block.columns[i]?.align === 'right' ? 'k-paper-right' : undefined}
                    >
                      {i === 0 && row.mark && <PaperMarkView mark={row.mark} id={JSON.stringify(row.cells)} />}
                      <PaperText text={cell} />
                    </td>
                  ))}
                </tr>
              ),
            )}
          </tbody>
        </table>
      );
    case 'amounts':
      return (
        <table className="k-paper-table">
          <caption className="k-heard">{block.summary}</caption>
          <tbody>
            {block.rows.map((row) => (
              <tr key={JSON.stringify(row)} className={row.total ? 'k-paper-strong' : undefined}>
                <th scope="row">
                  <PaperText text={row.what} />
                </th>
                <td className="k-paper-right">{row.amount}</td>
              </tr>
            ))}
          </tbody>
        </table>
      );
    case 'ruler':
      return <PaperRuler ruler={block} />;
    case 'comparison':
      return <ComparisonTable block={block} />;
    case 'consents':
      return (
        <table className="k-paper-table">
          <caption className="k-heard">{block.summary}</caption>
          <thead className="k-paper-heard-head">
            <tr>
              {block.columns.map((column) => (
                <th key={column} scope="col">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {block.lines.map((line) => (
              <tr key={line.asks}>
                <th scope="row">{line.asks}</th>
                <td className="k-paper-right k-paper-answered">
                  <PaperText text={line.answerSays} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      );
    case 'answers':
      return (
        <ul className="k-paper-answers">
          {block.answers.map((answer) => (
            <li key={answer.title}>
              <TickBox chosen={answer.chosen} says={answer.chosen ? block.ticks.chosen : block.ticks.open} />
              <b className="k-paper-answer">{answer.title}</b>
              <b className="k-paper-figure">{answer.figure}</b>
              {answer.lines.map((line) => (
                <span key={JSON.stringify(line)}>
                  <PaperText text={line} />
                </span>
              ))}
            </li>
          ))}
        </ul>
      );
    case 'choices':
      return (
        <ul className="k-paper-choices">
          {block.choices.map((choice) => (
            <li key={choice.text}>
              <TickBox chosen={choice.chosen} says={choice.chosen ? block.ticks.chosen : block.ticks.open} />{' '}
              {choice.text}
            </li>
          ))}
        </ul>
      );
    case 'signature':
      return <Signed block={block} />;
    case 'signing':
      return <SigningLines line={block} />;
  }
}

const STEPS = { worse: 14, equal: 50, better: 86, 'cannot-be-compared': 50 } as const;

function ComparisonTable({ block }: { readonly block: ComparisonBlock }) {
  return (
    <table className="k-paper-table">
      <caption className="k-heard">{block.summary}</caption>
      <thead>
        <tr>
          {block.columns.map((column, i) => (
            <ColumnHead key={`${i}${column}`} head={column} />
          ))}
        </tr>
      </thead>
      <tbody>
        {block.rows.map((row) => (
          <tr key={row.attribute}>
            <th scope="row">
              <b>{row.attribute}</b>
            </th>
            <td>{row.yours}</td>
            <td>{row.offered}</td>
            <td>
              <svg width={100} height={20} aria-hidden="true">
                <path d="M14 10H86M14 5v10M50 2v16M86 5v10" className="k-paper-small-rule" />
                <circle
                  cx={STEPS[row.verdict]}
                  cy={10}
                  r={5.5}
                  className={row.verdict === 'cannot-be-compared' ? 'k-paper-open' : 'k-rule-point'}
                />
              </svg>
            </td>
            <td>
              <PaperText text={row.verdictSays} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** A column's name; a cell without one is no header. */
function ColumnHead({ head }: { readonly head: string }) {
  return head === '' ? <td /> : <th scope="col">{head}</th>;
}

function TickBox({ chosen, says }: { readonly chosen: boolean; readonly says: string }) {
  return (
    <svg width={18} height={18} className="k-paper-box" role="img" aria-label={says}>
      <rect x={1} y={1} width={16} height={16} />
      {chosen && <path d="M4 9l4 5l7 -10" />}
    </svg>
  );
}

/** A signature given: the hand's own strokes, or the typed name that stands for them. */
function Signed({ block }: { readonly block: SignatureBlock }) {
  const { strokes } = block;
  return (
    <div className="k-paper-signed">
      {strokes === null ? (
        <p className="k-paper-typed">{block.typed}</p>
      ) : (
        <svg viewBox={`0 0 ${strokes.width} ${strokes.height}`} role="img" aria-label={block.says}>
          {strokes.strokes.map((stroke) => (
            <path key={JSON.stringify(stroke.slice(0, 2))} d={strokePath(stroke)} className="k-sign-ink" />
          ))}
        </svg>
      )}
      <p className="k-paper-note">
        {block.who}, {block.when}. {block.what}
      </p>
    </div>
  );
}

/** The foot of a paper: signed, or lines to be filled in by pen. */
export function SigningLines({ line }: { readonly line: SigningLine }) {
  if (line.block === 'signature') return <Signed block={line} />;
  return (
    <ul className="k-paper-lines">
      {line.lines.map((one) => (
        <li key={one}>{one}</li>
      ))}
    </ul>
  );
}
