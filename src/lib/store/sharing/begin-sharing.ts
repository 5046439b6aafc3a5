import { SHOP_DOC } from '../database';
import { rackOf } from '../hand';
import type { Shelf } from '../keeping';
import { Carrier } from './carrier';
import { Link, type LinkTo } from './link';

/** A shelf whose documents are a shop's. */
export interface Sharing {
	readonly link: Link;
	readonly carrier: Carrier;
	stop(): void;
}

/** From here on the documents of the shelf are kept in step with a shop's. */
export function beginSharing(shelf: Shelf, to: LinkTo): Sharing {
	const link = new Link(to);
	const carrier = new Carrier(shelf, link);
	link.onMoved = (moved) => carrier.hear(moved);
	const shop = shelf.borrow(SHOP_DOC);
	shop.keeping.beside = () => rackOf(shop);
	shelf.watch(link);
	if (!shop.loaded) shop.load().catch(() => undefined); // whoever opens a job tries again
	link.start();
	const stop = (): void => {
		carrier.stop();
		link.stop();
	};
	return { link, carrier, stop };
}
