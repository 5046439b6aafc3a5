export { beginSharing, type Sharing } from './begin-sharing';
export type { LinkState, LinkTo } from './link';
export { linkWords } from './link-words';
export { databaseOfShop, type Membership, membershipIn, putMembership } from './membership';
export {
	type Cutting,
	type DeviceWord,
	frame,
	isDocName,
	LIMITS,
	type LinkLine,
	type NotKept,
	type PlaceOpen,
	type Present,
	type SentAway,
	type Right,
	RIGHTS,
	type ShopStanding,
	type ShopWord,
	SPEECH,
	type Speech,
	unframe,
} from './words';
