export type { Sharing } from './begin-sharing';
export type { LinkState, LinkTo } from './link';
export { databaseOfShop, type Membership, membershipIn, putMembership } from './membership';
export {
	type DeviceWord,
	frame,
	isDocName,
	LIMITS,
	type LinkLine,
	type NotKept,
	type Refusal,
	type Right,
	RIGHTS,
	type ShopStanding,
	type ShopWord,
	SPEECH,
	type Speech,
	unframe,
} from './words';
