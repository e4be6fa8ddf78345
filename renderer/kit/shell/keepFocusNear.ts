const STOPS = 'a[href], button, input, select, textarea, [tabindex]';

/**
 * Keeps the focus where the hands were: when what had it is gone or can no longer be pressed, it goes to the closest
 * frame around it that is still there, so that the next Tab goes on from that place and not from the top of the window.
 * Answers how to stop.
 */
export function keepFocusNear(window: Window): () => void {
  const { document } = window;
  let last: readonly Element[] = [];
  let waits = 0;

  const remember = ({ target }: FocusEvent) => {
    if (!(target instanceof Element)) return;
    last = [target, ...framesAround(target)];
  };
  const lost = (): boolean => {
    const [stop] = last;
    const nowhere = document.activeElement === null || document.activeElement === document.body;
    return nowhere && stop !== undefined && (!stop.isConnected || stop.matches(':disabled'));
  };
  const look = () => {
    if (waits !== 0 || !lost()) return;
    // A dialog that closes gives the focus back in the next frame; it goes first.
    waits = window.requestAnimationFrame(() => {
      waits = window.requestAnimationFrame(() => {
        waits = 0;
        if (lost()) focusOn(closest(document, last));
      });
    });
  };

  const changes = new MutationObserver(look);
  changes.observe(document.body, { childList: true, subtree: true, attributes: true, attributeFilter: ['disabled'] });
  document.addEventListener('focusin', remember, true);
  return () => {
    changes.disconnect();
    window.cancelAnimationFrame(waits);
    document.removeEventListener('focusin', remember, true);
  };
}

function framesAround(element: Element): readonly Element[] {
  const frame = element.parentElement;
  return frame === null || frame === element.ownerDocument.body ? [] : [frame, ...framesAround(frame)];
}

/** The closest frame still there that holds something to stop at; the room's work when the whole room is another. */
function closest(document: Document, frames: readonly Element[]): Element | null {
  const near = frames.slice(1).find((frame) => frame.isConnected && frame.querySelector(STOPS) !== null);
  return near?.closest('main, [role="dialog"]') ? near : document.querySelector('main');
}

function focusOn(frame: Element | null): void {
  if (!(frame instanceof HTMLElement)) return;
  if (!frame.hasAttribute('tabindex')) {
    frame.tabIndex = -1;
    frame.addEventListener('blur', () => frame.removeAttribute('tabindex'), { once: true });
  }
  frame.focus({ preventScroll: true });
}
