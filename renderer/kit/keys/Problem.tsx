import type { ReactNode } from 'react';
import './Problem.css';

/** What happened, what stays as it was, what to do. */
export type ProblemWords = { readonly says: string; readonly unchanged?: string; readonly next?: string };
export type ProblemProps = ProblemWords & {
  /** Keys that do what `next` advises. */
  readonly children?: ReactNode;
  /** In place beside what it is about, without a frame. */
  readonly slim?: boolean;
};

/** A refusal or failure in words; announced once, never a colour. */
export function Problem({ says, unchanged, next, children, slim = false }: ProblemProps) {
  return (
    <div className={`k-problem${slim ? ' k-problem-slim' : ''}`} role="alert">
      <p>
        <b>{says}</b> {unchanged}
      </p>
      {next !== undefined && <p>{next}</p>}
      {children !== undefined && <div className="k-problem-keys">{children}</div>}
    </div>
  );
}
