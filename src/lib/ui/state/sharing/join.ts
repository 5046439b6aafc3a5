import { openStore, putMembership } from '../../../store';
import { pageStorage } from '../saving';
import { linkTo } from './page-link';

/** The secret of a link, as it was opened or pasted; null for none. */
export function secretIn(text: string): string | null {
	const found = /(?:#|^)join=([\w-]{10,100})\s*$/.exec(text.trim());
	return found?.[1] ?? null;
}

/** What this device may be called, until somebody says better. */
export function usualDeviceName({ userAgent, maxTouchPoints }: Navigator): string {
	if (/\bMobi/.test(userAgent)) return 'Phone';
	return maxTouchPoints > 1 ? 'Tablet' : 'Desk';
}

/** Joins the shop on whose server this page lies; in words why not, or null when it is done. */
export async function joinByLink(secret: string, device: string): Promise<string | null> {
	const [{ joinShop }, { refusalWords }] = await Promise.all([
		import('../../../store/sharing/join-shop'),
		import('../../../store/sharing/link-words'),
	]);
	const answer = await joinShop(linkTo({ secret, device }), openStore);
	if ('refused' in answer) return refusalWords(answer.refused);
	const isKept = putMembership(pageStorage('localStorage'), answer.membership);
	return isKept ? null : refusalWords('no database');
}
