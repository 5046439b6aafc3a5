export {
	docOfJob,
	type Everything,
	openStore,
	SHOP_DOC,
	type Store,
	type StoredJob,
} from './database';
export { JobInHand, type JobToOpen, openJob, shopAtHand } from './hand';
export { type SaveState, Shelf } from './keeping';
export {
	backup,
	emptyTrash,
	fileOfRevision,
	keepRevision,
	putBack,
	readBackup,
	restore,
	type RevisionLine,
	revisions,
	throwAway,
} from './keepsake';
export { lifted, withRack } from './rack';
