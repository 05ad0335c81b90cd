import { useEffect, useState } from 'react';
import type { FileState } from '../engine/engine.ts';
import { shell } from './shell.ts';

const isTextField = (element: Element | null): boolean =>
  element instanceof HTMLTextAreaElement ||
  (element instanceof HTMLInputElement && ['text', 'search', 'number', ''].includes(element.type));

/** True while the caret stands in a field: then undo is the field's own. */
function useIsEditingText(): boolean {
  const [editing, setEditing] = useState(false);
  useEffect(() => {
    const look = () => setEditing(isTextField(document.activeElement));
    document.addEventListener('focusin', look);
    document.addEventListener('focusout', look);
    return () => {
      document.removeEventListener('focusin', look);
      document.removeEventListener('focusout', look);
    };
  }, []);
  return editing;
}

/** Keeps the shell's menus and title true. */
export function useWindowState(file: FileState): void {
  const editingText = useIsEditingText();
  const open = file.is === 'open' ? file : undefined;
  const undo = open?.undo;
  const redo = open?.redo;
  const saving = (open?.saving.length ?? 0) > 0;
  const hasBuild = open !== undefined;
  const readOnly = open?.readOnly !== undefined;
  useEffect(() => {
    void shell.invoke('window:state', { undo, redo, saving, editingText, hasBuild, readOnly });
  }, [undo, redo, saving, editingText, hasBuild, readOnly]);
}
