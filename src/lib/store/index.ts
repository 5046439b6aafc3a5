export {
	docOfJob,
	type Everything,
	hashIn,
	openStore,
	SHOP_DOC,
	type Store,
	type StoredJob,
} from './database';
export { fileIn, seedOf, SharedDocument } from './document';
export { JobInHand, type JobToOpen, openJob, shopAtHand } from './hand';
export { type SaveState, Shelf } from './keeping';
export {
	archive,
	backup,
	bringBack,
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
export { makesPicture } from './pictures';
export { lifted, withRack } from './rack';
export {
	beginSharing,
	databaseOfShop,
	type Cutting,
	type DeviceWord,
	frame,
	isDocName,
	LIMITS,
	type LinkLine,
	type LinkState,
	type LinkTo,
	linkWords,
	type Membership,
	membershipIn,
	type NotKept,
	type PlaceOpen,
	type Present,
	putMembership,
	type Right,
	RIGHTS,
	type SentAway,
	type Sharing,
	type ShopStanding,
	type ShopWord,
	SPEECH,
	type Speech,
	unframe,
} from './sharing';
