import { type ReactNode, useEffect, useEffectEvent, useRef } from 'react';
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import './Ask.css';

export type AskProps = {
  readonly open: boolean;
  readonly title: string;
  readonly children: ReactNode;
  /** Keys at the foot; the harmless one first, so that a stray Enter or Space never discards. */
  readonly keys: ReactNode;
  /** Escape, or a press outside when `light`. */
  readonly onClose: () => void;
  /** May be left by a press beside it; leave off when something was written in it. */
  readonly light?: boolean;
  readonly width?: number;
};

/** A question over the room. Focus goes to its heading's frame, stays inside, and returns where it came from. */
export function Ask({ open, title, children, keys, onClose, light = false, width = 560 }: AskProps) {
  const frame = useRef<HTMLDivElement>(null);
  // A key that goes off, or away, under the hand takes the focus with it: then Escape reaches no dialog by itself.
  const leave = useEffectEvent((event: KeyboardEvent) => {
    const onTop = [...document.querySelectorAll('.k-ask')].at(-1) === frame.current;
    if (event.key === 'Escape' && onTop && event.target === document.body) onClose();
  });
  useEffect(() => {
    if (!open) return;
    document.addEventListener('keydown', leave);
    return () => document.removeEventListener('keydown', leave);
  }, [open]);
  return (
    <ModalOverlay
      className="k-ask-over"
      isOpen={open}
      isDismissable={light}
      onOpenChange={(now) => {
        if (!now) onClose();
      }}
    >
      <Modal ref={frame} className="k-ask" style={{ maxWidth: width }}>
        <Dialog className="k-ask-body">
          <Heading slot="title" className="k-ask-title" level={2}>
            {title}
          </Heading>
          <div className="k-ask-text">{children}</div>
          <div className="k-ask-keys">{keys}</div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
