export { jobsBlocks, sharePages } from './pages';
export {
	APART_MEANS,
	HOW_SHARED,
	JOB_HEADS,
	jobRows,
	SAVING_HEADS,
	savingRows,
	savingText,
	SHARE_HEADS,
	shareRows,
	WAY_HEADS,
	wayRows,
} from './rows';
export { jobOf, jobText, ownerName } from './whose';
