import { useEffect, useState, useSyncExternalStore } from 'react';
import type { DrawingIssue } from '../../shared/ipc/contract.ts';
import type { OpenFile } from '../engine/engine.ts';
import { shell } from './shell.ts';

let made = 0;
const listeners = new Set<() => void>();

/** Says that an issue was made, so that the title block reads it anew. */
export function issueMade(): void {
  made++;
  for (const listener of listeners) listener();
}

function useIssueCount(): number {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => made,
  );
}

export function useIssues(file: OpenFile): readonly DrawingIssue[] {
  const [issues, setIssues] = useState<readonly DrawingIssue[]>([]);
  const count = useIssueCount();
  const path = `${file.folder}/${file.fileName}#${count}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: read anew for another file, or when an issue was made
  useEffect(() => {
    let here = true;
    void shell.invoke('issue:list', undefined).then((list) => here && setIssues(list));
    return () => {
      here = false;
    };
  }, [path]);
  return issues;
}

/** Letter of the latest issue of the drawings. */
export const useLatestIssue = (file: OpenFile): string | undefined => {
  const issues = useIssues(file);
  return issues.reduce<DrawingIssue | undefined>(
    (last, each) => (last === undefined || each.revision >= last.revision ? each : last),
    undefined,
  )?.letter;
};
