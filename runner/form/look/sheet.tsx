import { type KeyboardEvent, type ReactNode, useEffect, useId, useRef } from "react";
import { classes } from "./classes.ts";
import { useWide } from "./use-wide.ts";
import { WordButton } from "./word.tsx";

export interface SheetProps {
  readonly number?: string;
  readonly title: string;
  readonly second?: ReactNode;
  /** The word that closes it. */
  readonly close: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/**
 * Mounted while open. Rises from below over a veil and keeps the focus on a phone; on a desktop it
 * opens in the page where it stands. Focus goes to its title, and back where it was on closing.
 */
export function Sheet({ number, title, second, close, onClose, children }: SheetProps) {
  const wide = useWide();
  const sheet = useRef<HTMLDialogElement>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const titleId = useId();

  useEffect(() => {
    const dialog = sheet.current;
    const before = document.activeElement;
    if (!dialog) return;
    if (wide) dialog.show();
    else dialog.showModal();
    heading.current?.focus();
    return () => {
      dialog.close();
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, [wide]);

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== "Escape" || event.defaultPrevented) return;
    event.preventDefault();
    event.stopPropagation();
    onClose();
  };

  return (
    <dialog
      ref={sheet}
      className={classes("sheet", wide && "sheet-inline")}
      aria-labelledby={titleId}
      onKeyDown={onKeyDown}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <div className="sheet-head">
        <span className="sheet-number">{number}</span>
        <div>
          <h2 id={titleId} ref={heading} tabIndex={-1}>
            {title}
          </h2>
          {second !== undefined && <p className="second">{second}</p>}
        </div>
        <WordButton onClick={onClose}>{close}</WordButton>
      </div>
      <div className="sheet-body">{children}</div>
    </dialog>
  );
}
