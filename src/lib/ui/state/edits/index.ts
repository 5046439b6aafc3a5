export { changedParts } from './changed-parts';
export { hasSearchRecord, withoutSearchRecord, withSearchRecord } from './effort';
export { JobEdits } from './job-edits';
export { insert, listAt, pathKey, put, startsWith } from './path';
