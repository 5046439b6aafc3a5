/*
 * The job in the address: '/?job=3f…#boards/2' is the second sheet of that job. An address
 * without one is of whatever job is open, as it always was.
 */

/** The job an address names; null for none. */
export function jobAsked(search: string): string | null {
	const asked = new URLSearchParams(search).get('job');
	return asked === null || asked === '' ? null : asked;
}

/** The address of a chapter of this job. */
export const addressOf = (id: string, hash: string): `/?job=${string}` =>
	`/?job=${encodeURIComponent(id)}${hash}`;

/** What is to be done about an address: fetch the job it names, or name the one that is open. */
export type AddressStep = 'fetch' | 'name' | 'none';

/**
 * @param asked the job the address names
 * @param open the job that is open
 * @param before the job the address named when it was last looked at
 */
export function addressStep(
	asked: string | null,
	open: string,
	before: string | null,
): AddressStep {
	if (asked === open) return 'none';
	return asked !== null && asked !== before ? 'fetch' : 'name';
}
