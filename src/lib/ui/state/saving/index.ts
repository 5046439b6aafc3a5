export { askForRoom } from './ask-for-room';
export { leaveWords, type LeftJob, takeWords } from './last-words';
export { pageStorage } from './page-storage';
export { Saver } from './saver.svelte';
export { leaveWriterMark, takeWriterMark } from './writer-mark';
export { HourlyRevisions } from './hourly-revisions';
