import { Dialog, Modal, ModalOverlay } from 'react-aria-components';
import { Key } from '../../kit/keys/Key.tsx';
import { PaperView } from '../../kit/paper/PaperView.tsx';
import { SignaturePad } from '../../kit/paper/SignaturePad.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { signedAlone } from './ConsentRow.tsx';
import type { LivePapers } from './livePapers.ts';
import { useTakingIn } from './sheetContext.tsx';

/** The papers alone, large, turned to the owner to read and sign; one way back, with the shop's key. */
export function TurnedToOwner({ papers, onBack }: { readonly papers: LivePapers; readonly onBack: () => void }) {
  const { t } = useWords();
  const { sheet, marks, sign } = useTakingIn();
  return (
    <ModalOverlay className="counter-turned-over" isOpen isKeyboardDismissDisabled>
      <Modal className="counter-turned">
        <Dialog aria-label={t('counter.turned.title')} className="counter-turned-body">
          <PaperView paper={papers.receipt} large />
          <PaperView paper={papers.consents} large />
          {signedAlone(sheet).map((id) => (
            <SignaturePad
              key={id}
              label={t('counter.alone.sign', { what: t(`counter.consents.${id}`) })}
              value={marks[id] ?? null}
              onChange={(mark) => sign(id, mark)}
            />
          ))}
          <SignaturePad
            label={t('counter.sign.label')}
            value={marks.sheet ?? null}
            onChange={(mark) => sign('sheet', mark)}
          />
          <Key large onPress={onBack}>
            {t('counter.turned.back')}
          </Key>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
