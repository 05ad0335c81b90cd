import { useState } from 'react';
import type { OpenFile } from '../engine/engine.ts';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { TextField } from '../kit/field.tsx';
import { issueMade, useIssues } from './issues.ts';
import { nextLetter } from './next-letter.ts';
import { notify } from './notices.ts';
import { shell } from './shell.ts';

/** Names the present state of the drawings, so that what is made can be held against it later. */
export function IssueDialog({ file, onClose }: { readonly file: OpenFile; readonly onClose: () => void }) {
  const issues = useIssues(file);
  const [letter, setLetter] = useState<string>();
  const [title, setTitle] = useState('');
  const [note, setNote] = useState('');
  const [error, setError] = useState<string>();
  const offered = letter ?? nextLetter(issues.map((issue) => issue.letter));
  const make = async () => {
    if (offered.trim() === '') return setError('An issue needs a letter. Write one, such as A.');
    const answer = await shell.invoke('issue:make', { letter: offered.trim(), title: title.trim(), note: note.trim() });
    if (answer.ok) {
      issueMade();
      notify({ sentence: `Issue ${answer.value.letter} of the drawings is kept in the build.`, isRefusal: false });
      onClose();
    } else if (answer.error.code === 'letter-taken')
      setError(`There is an issue ${offered} already. Choose another letter.`);
    else setError('The issue could not be put on disk. See to the file, then try again.');
  };
  return (
    <Dialog
      title="Make drawing issue"
      onClose={onClose}
      onSubmit={() => void make()}
      actions={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button look="main" type="submit">
            Make Issue
          </Button>
        </>
      }
    >
      <p className="soft">
        An issue is a named state of all drawings. It stays in the build file and is never changed.
      </p>
      <div className="form-row">
        <TextField label="Letter" value={offered} maxLength={4} onChange={setLetter} error={error} />
        <TextField label="Title" value={title} onChange={setTitle} placeholder="For the pattern shop" />
      </div>
      <TextField label="Note" value={note} onChange={setNote} />
      {issues.length > 0 && (
        <ul className="found" aria-label="Issues so far">
          {issues.map((issue) => (
            <li key={issue.letter} className="list-row">
              <span className="figure found-kind">{issue.letter}</span>
              <span className="ellipsis grow">{issue.title || 'without a title'}</span>
              <span className="soft">
                {new Date(issue.issuedAt).toLocaleDateString('en-GB', { dateStyle: 'medium' })}
              </span>
            </li>
          ))}
        </ul>
      )}
    </Dialog>
  );
}
