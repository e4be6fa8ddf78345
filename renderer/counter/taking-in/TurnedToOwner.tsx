import { Dialog, Modal, ModalOverlay } from 'react-aria-components';
import { Key } from '../../kit/keys/Key.tsx';
import { PaperView } from '../../kit/paper/PaperView.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { SignUnder } from '../fields/SignUnder.tsx';
import { useTakingIn } from './sheetContext.tsx';
import { signedAlone } from './signedAlone.ts';

/** The papers alone, large, turned to the owner to read and sign; one way back, with the shop's key. */
export function TurnedToOwner({ onBack }: { readonly onBack: () => void }) {
  const { t } = useWords();
  const { sheet, marks, sign, papers } = useTakingIn();
  return (
    <ModalOverlay className="counter-turned-over" isOpen isKeyboardDismissDisabled>
      <Modal className="counter-turned">
        <Dialog aria-label={t('counter.turned.title')} className="counter-turned-body">
          {papers.shown?.papers.map((paper) => (
            <PaperView key={paper.kind} paper={paper} large />
          ))}
          {signedAlone(sheet).map((id) => (
            <SignUnder
              key={id}
              label={t('counter.alone.sign', { what: t(`counter.consents.${id}`) })}
              preview={papers}
              value={marks[id] ?? null}
              onChange={(mark) => sign(id, mark)}
            />
          ))}
          <SignUnder
            label={t('counter.sign.label')}
            preview={papers}
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
