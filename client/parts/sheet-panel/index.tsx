import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import './style.css';

/** A panel that comes up over the lower part of a face. Its key at the bottom, Escape and Back close it. */
export function SheetPanel(props: { title: string; close: () => void; children: ComponentChildren }) {
  const { title, close, children } = props;
  const panel = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const came = document.activeElement;
    panel.current?.show();
    panel.current?.querySelector<HTMLElement>('h2')?.focus();
    return () => {
      if (came instanceof HTMLElement) came.focus();
    };
  }, []);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Escape') return;
    event.stopPropagation();
    close();
  };
  return (
    <dialog class="sheet-panel" ref={panel} aria-label={title} onKeyDown={onKeyDown}>
      <h2 tabIndex={-1}>{title}</h2>
      <div class="sheet-body">{children}</div>
      <button type="button" class="close-key" onClick={close}>
        Close
      </button>
    </dialog>
  );
}
