import { Dialog, Modal, ModalOverlay } from 'react-aria-components';
import { isPaper, type Paper } from '../../../core/papers/content.ts';
import type { Refusal } from '../../../core/refusal.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { PaperView } from '../../kit/paper/PaperView.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { changedFields } from './changedFields.ts';
import type { Signed } from './signedInput.ts';

/** What was signed and what would be issued, side by side, where a command was refused because they differ. */
export function ContentChanged({
  refusal,
  signed,
  onClose,
}: {
  readonly refusal: Refusal | null;
  /** Everything that was signed, or shown where nothing is signed; the one that differs is set beside. */
  readonly signed: readonly (Signed['under'] | null | undefined)[];
  readonly onClose: () => void;
}) {
  const { t } = useWords();
  if (refusal?.refused !== 'content-changed') return null;
  const before = signed.find((one) => one?.contentHash === refusal.signed);
  const changed = before ? changedFields(before.said, refusal.said) : [];
  const now = Array.isArray(refusal.papers) ? refusal.papers.filter(isPaper) : [];
  return (
    <ModalOverlay className="counter-turned-over" isOpen isKeyboardDismissDisabled>
      <Modal className="counter-turned">
        <Dialog aria-label={t('counter.content-changed.title')} className="counter-turned-body">
          <h2>{t('counter.content-changed.title')}</h2>
          <p>{t('counter.content-changed.says')}</p>
          {changed.length > 0 && (
            <p>
              {t('counter.content-changed.differs', {
                what: changed.map((id) => t(`counter.content-changed.fields.${id}`)).join('; '),
              })}
            </p>
          )}
          <div className="counter-side-by-side">
            <Papers says={t('counter.content-changed.signed')} papers={before?.papers ?? []} />
            <Papers says={t('counter.content-changed.now')} papers={now} />
          </div>
          <Key large onPress={onClose}>
            {t('counter.content-changed.back')}
          </Key>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Papers({ says, papers }: { readonly says: string; readonly papers: readonly Paper[] }) {
  return (
    <section aria-label={says}>
      <h3>{says}</h3>
      {papers.map((paper) => (
        <PaperView key={paper.kind} paper={paper} />
      ))}
    </section>
  );
}
