import { type ReactNode, useEffect, useRef } from 'react';

interface SheetOverProps {
  readonly title: string;
  readonly children: ReactNode;
  readonly onClose: () => void;
}

/** A sheet laid over the page until it is dealt with. Escape closes it; focus stays in it and returns where it was (HTML dialog). */
export function SheetOver({ title, children, onClose }: SheetOverProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const shown = dialog.current;
    shown?.showModal();
    return () => shown?.close();
  }, []);
  return (
    <dialog ref={dialog} className="sheet-over" aria-label={title} onClose={onClose}>
      <h2>{title}</h2>
      {children}
    </dialog>
  );
}
