import type { Right } from './words';

/*
 * Which shop this browser has joined stands in its small synchronous storage, so that the start
 * knows which database to open without asking anybody. A shop has a database of its own: what was
 * kept here before is neither mixed with it nor told to it, and is there again once the shop is
 * left.
 */

const KEY = 'kerf-and-nap shop';

export interface Membership {
	/** The shop's mark. */
	readonly shop: string;
	readonly secret: string;
	/** What this device is called there. */
	readonly device: string;
	/** What its link allows. */
	readonly right: Right;
}

/** Null for none, and where the browser keeps none. */
export function membershipIn(storage: Storage | null): Membership | null {
	try {
		const { shop, secret, device, right } = JSON.parse(
			storage?.getItem(KEY) ?? '{}',
		) as Partial<Membership>;
		const isWhole = [shop, secret].every((text) => typeof text === 'string' && text !== '');
		if (!isWhole || shop === undefined || secret === undefined) return null;
		return { shop, secret, device: String(device ?? ''), right: right ?? 'look' };
	} catch {
		return null;
	}
}

/** Null leaves the shop. False where the browser does not keep it. */
export function putMembership(storage: Storage | null, membership: Membership | null): boolean {
	try {
		if (membership) storage?.setItem(KEY, JSON.stringify(membership));
		else storage?.removeItem(KEY);
		return storage !== null;
	} catch {
		return false;
	}
}

/** The name of the database of a shop's documents. */
export const databaseOfShop = ({ shop }: Pick<Membership, 'shop'>): string =>
	`kerf-and-nap shop ${shop}`;
