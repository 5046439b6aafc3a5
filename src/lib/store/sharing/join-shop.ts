import { SHOP_DOC, type Store } from '../database';
import { Shelf } from '../keeping';
import { beginSharing } from './begin-sharing';
import { Link, type LinkTo } from './link';
import type { Membership } from './membership';
import { databaseOfShop } from './membership';
import type { SentAway, Right } from './words';

/** Why a shop could not be joined. */
export type NotJoined = SentAway | 'away' | 'no database';

/**
 * Joins a shop: asks to be let in, and brings its rack into a database of its own, so that nothing
 * that is opened there begins a rack by itself.
 */
export async function joinShop(
	to: LinkTo,
	open: (database: string) => Store,
): Promise<{ readonly membership: Membership } | { readonly refused: NotJoined }> {
	const asked = await askedIn(to);
	if ('refused' in asked) return asked;
	const { secret, device } = to;
	const membership: Membership = { ...asked, secret, device };
	const store = open(databaseOfShop(membership));
	const shelf = new Shelf(store, { writer: 'joining', waits: to.waits, channel: asked.shop });
	const shop = shelf.borrow(SHOP_DOC);
	const sharing = beginSharing(shelf, to);
	try {
		await shop.load();
		await sharing.link.inStep(SHOP_DOC);
		shop.touch();
		await shop.settled();
		return shop.saving === 'saved' ? { membership } : { refused: 'no database' };
	} catch {
		return { refused: sharing.link.state.kind === 'joined' ? 'no database' : 'away' };
	} finally {
		sharing.stop();
		shelf.close();
		store.close();
	}
}

/** The shop's mark, from a first connection that takes in nothing. */
function askedIn(
	to: LinkTo,
): Promise<{ readonly shop: string; readonly right: Right } | { readonly refused: NotJoined }> {
	return new Promise((resolve) => {
		const link = new Link(to);
		link.onState = () => {
			const { state } = link;
			if (state.kind === 'reaching') return;
			if (state.kind === 'joined') resolve({ shop: link.shop, right: state.right });
			else resolve({ refused: state.kind === 'refused' ? state.why : 'away' });
			link.stop();
		};
		link.start();
	});
}
