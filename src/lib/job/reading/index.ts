export { guard } from './guard';
export { showHidden } from './hidden-letters';
export { problemsOf } from './issue-words';
export { readJob, type Unsized } from './read';
export { LARGEST_FILE, parseJobText, parseText } from './text';
