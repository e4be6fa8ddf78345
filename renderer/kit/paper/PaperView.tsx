import type { Labels, Paper, Section, Sheet } from '../../../core/papers/content.ts';
import { PaperBlock, SigningLines } from './PaperBlock.tsx';
import { PaperMarkView, PaperText } from './PaperText.tsx';
import { QrCode } from './QrCode.tsx';
import './Paper.css';
import './SignaturePad.css';

export type PaperViewProps = {
  readonly paper: Paper;
  /** What is stamped over it, and is none of its content: that it was replaced, that it is a copy. */
  readonly stamps?: readonly string[];
  /** Label of the section that the field in focus writes: underlined in blue, on screen only. */
  readonly writing?: string;
  /** Turned to the owner: 20 px text. */
  readonly large?: boolean;
};

/** The paper itself, live: the same content the printed one is made from, in the same type, in the owner's language. */
export function PaperView({ paper, stamps = [], writing, large = false }: PaperViewProps) {
  const className = large ? 'k-paper k-paper-large' : 'k-paper';
  return (
    <article className={className} lang={paper.language} aria-label={paper.title}>
      {paper.shape === 'sheet' ? (
        <SheetView sheet={paper} stamps={stamps} writing={writing} />
      ) : (
        <LabelsView labels={paper} />
      )}
    </article>
  );
}

function SheetView({
  sheet,
  stamps,
  writing,
}: {
  readonly sheet: Sheet;
  readonly stamps: readonly string[];
  readonly writing: string | undefined;
}) {
  const { head, foot } = sheet;
  return (
    <>
      <header className="k-paper-head">
        <div>
          <h2>{sheet.title}</h2>
          {head.meta.map((line) => (
            <p key={JSON.stringify(line)} className="k-paper-meta">
              <PaperText text={line} />
            </p>
          ))}
        </div>
        <p className="k-paper-shop">
          {head.shop.map((line) => (
            <span key={line}>{line}</span>
          ))}
        </p>
        {head.qr && <QrCode text={head.qr.text} label={head.qr.says} size={72} />}
      </header>
      {stamps.map((stamp) => (
        <p key={stamp}>
          <strong>{stamp}</strong>
        </p>
      ))}
      {sheet.supersedes !== null && <p className="k-paper-meta">{sheet.supersedes}</p>}
      <p className="k-paper-lead">
        <PaperText text={sheet.lead} />
      </p>
      <Sections sections={sheet.body} writing={writing} />
      {sheet.signing && (
        <div className="k-paper-signing">
          <SigningLines line={sheet.signing.line} />
        </div>
      )}
      {sheet.record && (
        <div className="k-paper-record">
          <h2>{sheet.record.heading}</h2>
          <Sections sections={sheet.record.sections} writing={writing} />
        </div>
      )}
      <footer className="k-paper-foot">
        <span>{foot.note}</span>
        <span>{foot.record}</span>
      </footer>
    </>
  );
}

function Sections({
  sections,
  writing,
}: {
  readonly sections: readonly Section[];
  readonly writing: string | undefined;
}) {
  return (
    <>
      {sections.map((section) => (
        <section
          key={section.label}
          className={`k-paper-section${section.wide ? ' k-paper-wide' : ''}${section.label === writing ? ' k-paper-writing' : ''}`}
        >
          <h3>{section.label}</h3>
          <div className="k-paper-blocks">
            {section.blocks.map((block, i) => (
              <PaperBlock key={`${i}${block.block}`} block={block} />
            ))}
          </div>
        </section>
      ))}
    </>
  );
}

function LabelsView({ labels }: { readonly labels: Labels }) {
  return (
    <ul className="k-labels">
      {labels.labels.map((label) => (
        <li key={label.tag} style={{ aspectRatio: `${labels.size.widthMm} / ${labels.size.heightMm}` }}>
          <QrCode text={label.qr.text} label={label.qr.says} size={96} />
          <div>
            <b className="k-tag k-label-tag">{label.tag}</b>
            {label.mark && <PaperMarkView mark={label.mark} id={label.tag} />}
            {label.lines.map((line) => (
              <p key={JSON.stringify(line)}>
                <PaperText text={line} />
              </p>
            ))}
          </div>
        </li>
      ))}
    </ul>
  );
}
