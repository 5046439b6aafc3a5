export { jobsBlocks, sharePages } from './pages';
export { savingText } from './rows';
