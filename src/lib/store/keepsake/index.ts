export { backup, readBackup } from './backup';
export { restore } from './restore';
export { emptyTrash, putBack, throwAway } from './trash';
