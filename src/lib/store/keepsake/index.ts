export { backup, readBackup } from './backup';
export { restore } from './restore';
export { fileOfRevision, keepRevision, type RevisionLine, revisions } from './revisions';
export { archive, bringBack, emptyTrash, putBack, throwAway } from './trash';
