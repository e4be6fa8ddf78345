import { useWords } from '../../kit/text/words.tsx';
import './ToldSeen.css';

export type ToldSeenProps = {
  /** What the owner said it does, in the terms. */
  readonly told: string;
  /** In their own words. */
  readonly quote?: string;
  /** What the bench saw; `null` until it was powered on here. */
  readonly seen: string | null;
  readonly agree: boolean;
  /** What was told to the owner since, and agreed. */
  readonly after?: string;
};

/** What was told above what was seen, for as long as they differ; one line once they agree. */
export function ToldSeen({ told, quote, seen, agree, after }: ToldSeenProps) {
  const { t } = useWords();
  const said = quote === undefined ? null : <span className="k-muted"> “{quote}”</span>;
  if (agree && seen !== null) {
    return (
      <dl className="k-told">
        <dt>{t('kit.told.both')}</dt>
        <dd>
          {seen}
          {said}
        </dd>
      </dl>
    );
  }
  return (
    <dl className="k-told">
      <dt>{t('kit.told.told')}</dt>
      <dd>
        {told}
        {said}
      </dd>
      <dt>{t('kit.told.seen')}</dt>
      <dd>
        {seen === null ? (
          <span className="k-muted">{t('kit.told.not-yet')}</span>
        ) : (
          <>
            {seen} <b className="k-accent">{t('kit.told.differs')}</b>
          </>
        )}
        {after !== undefined && <span className="k-muted"> {after}</span>}
      </dd>
    </dl>
  );
}
