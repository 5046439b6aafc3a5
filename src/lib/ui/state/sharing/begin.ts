import {
	beginSharing,
	type LinkState,
	linkWords,
	type Membership,
	type Sharing,
	type Shelf,
} from '../../../store';
import { linkTo } from './page-link';

/** What is told of how a browser stands with its shop. */
export interface SharingTold {
	state: LinkState | null;
	words: string;
	notTaken: string;
	carried: number;
}

/** Keeps the documents of the shelf in step with the shop's, and tells how that stands. */
export function begin(shelf: Shelf, membership: Membership, tell: SharingTold): Sharing {
	const sharing = beginSharing(shelf, linkTo(membership));
	sharing.carrier.onCarried = () => tell.carried++;
	sharing.link.onState = () => {
		const { state, behind } = sharing.link;
		tell.state = state;
		tell.words = linkWords(state, behind.length, (at) => new Date(at).toLocaleTimeString());
		const why = [...new Set(behind.flatMap((one) => one.why ?? []))];
		const tells = membership.right !== 'look' && state.kind === 'joined';
		tell.notTaken = tells ? why.join('; ') : '';
	};
	sharing.link.onState();
	return sharing;
}
