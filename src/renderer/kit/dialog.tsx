import { type ReactNode, useEffect, useId, useRef } from 'react';
import { IconButton } from './button.tsx';
import { classNames } from './class-names.ts';
import { RemoveIcon } from './icons.tsx';

interface DialogProps {
  readonly title: string;
  /** Called for Esc, the close button and the backdrop's Esc alike; the parent stops rendering the dialog. */
  readonly onClose: () => void;
  readonly wide?: boolean;
  readonly actions?: ReactNode;
  /** When given, the body is a form and Enter in a field does this. */
  readonly onSubmit?: () => void;
  readonly children: ReactNode;
}

const written =
  'input:not([type="checkbox"], [type="radio"], [readonly], :disabled), textarea:not([readonly], :disabled)';

/** Where the writer goes on: the first field that is written in, else the act that is expected, else what is read. */
const startOf = (dialog: HTMLDialogElement): HTMLElement | null =>
  dialog.querySelector<HTMLElement>(`.body :is(${written})`) ??
  dialog.querySelector<HTMLElement>('footer .button.main:enabled') ??
  dialog.querySelector<HTMLElement>('.body [tabindex="0"]');

/** A modal sheet. It is open while it is rendered; the browser keeps the focus inside and gives it back after. */
export function Dialog({ title, onClose, wide, actions, onSubmit, children }: DialogProps) {
  const element = useRef<HTMLDialogElement>(null);
  const heading = useId();
  useEffect(() => {
    const dialog = element.current;
    const before = document.activeElement;
    if (dialog !== null && !dialog.open) dialog.showModal();
    // The browser would choose the close button, as it comes first.
    if (dialog !== null) startOf(dialog)?.focus();
    return () => {
      dialog?.close();
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  const inside = (
    <>
      <header>
        <h2 id={heading}>{title}</h2>
        <IconButton label="Close" keys="Esc" icon={<RemoveIcon />} onClick={onClose} />
      </header>
      <div className="body">{children}</div>
      {actions !== undefined && <footer>{actions}</footer>}
    </>
  );
  return (
    <dialog
      ref={element}
      className={classNames('dialog', wide && 'wide')}
      aria-labelledby={heading}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
      onKeyDown={(event) => event.stopPropagation()}
    >
      {onSubmit === undefined ? (
        inside
      ) : (
        <form
          className="dialog-form"
          onSubmit={(event) => {
            event.preventDefault();
            onSubmit();
          }}
        >
          {inside}
        </form>
      )}
    </dialog>
  );
}
