/*
 * Places in a list as texts: between any two there is always another, so a thing is put in or moved
 * by writing one register and every device sorts alike.
 */

const DIGITS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz';

/** A source of hidden marks and of chance between places; each call gives so many digits. */
export type Fresh = (digits: number) => string;

/** `count` rising places between two (null: no limit on that side). Needs low < high. */
export function placesBetween(
	low: string | null,
	high: string | null,
	count: number,
	fresh: Fresh,
): string[] {
	if (count <= 0) return [];
	const half = Math.floor(count / 2);
	const middle = placeBetween(low, high, fresh);
	return [
		...placesBetween(low, middle, half, fresh),
		middle,
		...placesBetween(middle, high, count - half - 1, fresh),
	];
}

/** Two devices that put something between the same two hardly ever choose the same place. */
function placeBetween(low: string | null, high: string | null, fresh: Fresh): string {
	const middle = middleOf(low ?? '', high);
	const chance = `${middle}${fresh(2)}1`; // never ends in 0: below 'x0' there is no place but 'x'
	return high === null || chance < high ? chance : middle;
}

function middleOf(low: string, high: string | null): string {
	const same = high === null ? 0 : sharedStart(low, high);
	if (high !== null && same > 0)
		return high.slice(0, same) + middleOf(low.slice(same), high.slice(same));
	const from = low === '' ? 0 : DIGITS.indexOf(low.charAt(0));
	const to = high === null ? DIGITS.length : DIGITS.indexOf(high.charAt(0));
	if (to - from > 1) return DIGITS.charAt(Math.round((from + to) / 2));
	if (high !== null && high.length > 1) return high.charAt(0);
	return DIGITS.charAt(from) + middleOf(low.slice(1), null);
}

/** Digits both begin with; a place that has ended goes on in zeros. */
function sharedStart(low: string, high: string): number {
	let n = 0;
	while (n < high.length && (low.charAt(n) || '0') === high.charAt(n)) n++;
	return n;
}

/** Digits by chance. */
export const byChance: Fresh = (digits) =>
	Array.from(crypto.getRandomValues(new Uint8Array(digits)), (byte) =>
		DIGITS.charAt(byte % DIGITS.length),
	).join('');

/** The same digits each time, none twice: for what every device must write alike. */
export function countingUp(): Fresh {
	let n = 0;
	return (digits) => (n++).toString(36).padStart(digits, '0');
}
