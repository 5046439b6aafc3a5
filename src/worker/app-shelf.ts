/*
 * The app kept for work without a network: each version whole on a shelf of its own. A version is
 * used until its last page is closed; the next one waits beside it and takes nothing from it.
 */

const PREFIX = 'kerf-and-nap ';
/** Files whose name changes with what is in them: right whatever version asks. */
const FIXED = '/_app/immutable/';

/** What the browser keeps files on, as far as it is used here. */
export type Shelves = Pick<CacheStorage, 'open' | 'keys' | 'delete'>;
export type Fetch = (request: Request) => Promise<Response>;

/** One version of the app and its files, as addresses on this host. */
export interface Version {
	readonly shelf: string;
	readonly files: readonly string[];
	/** Any address inside the app opens this page. */
	readonly start: string;
}

/** The shelf of a build: another one for each, though the version has the same name. */
export function shelfOf(version: string, files: readonly string[]): string {
	let mark = 0x811c9dc5;
	for (const letter of files.join('\n'))
		mark = Math.imul(mark ^ (letter.codePointAt(0) ?? 0), 0x01000193) >>> 0;
	return `${PREFIX}${version} ${mark.toString(16)}`;
}

/**
 * Fetches a version whole, or not at all.
 *
 * @param anew asks the host itself for a file whose name stays from version to version, such as a
 * page: the browser may remember the one before
 */
export async function keepWhole(
	shelves: Shelves,
	{ shelf, files }: Version,
	anew: (path: string) => RequestInfo,
): Promise<void> {
	const kept = await shelves.open(shelf);
	await kept.addAll(files.map((path) => (path.includes(FIXED) ? path : anew(path))));
}

/** Takes away all other versions. Only when no page of theirs is open. */
export async function clearOthers(shelves: Shelves, { shelf }: Version): Promise<void> {
	for (const name of await othersOn(shelves, shelf)) await shelves.delete(name);
}

/**
 * May this version take over when a window asks for it? Not while others are open: they would meet
 * half of it.
 */
export const mayTakeOver = (windows: number): boolean => windows <= 1;

/**
 * May the other versions go, when a page says which files it is made of? Only when it is of this
 * version and stands alone.
 */
export function mayClear(version: Version, page: readonly string[], windows: number): boolean {
	return windows <= 1 && page.length > 0 && page.every((file) => version.files.includes(file));
}

/**
 * Kept files first; what is asked for beyond them comes from the network and is kept as well. A
 * page of another version that is still open gets its parts from the shelf it came from.
 */
export async function answerFrom(
	shelves: Shelves,
	{ shelf, start }: Version,
	request: Request,
	fetchIt: Fetch,
): Promise<Response> {
	const { pathname } = new URL(request.url);
	const own = await shelves.open(shelf);
	const kept = (await found(own, pathname)) ?? (await onOthers(shelves, shelf, pathname));
	if (kept) return kept;
	try {
		const fetched = await fetchIt(request);
		if (fetched.ok && fetched.type === 'basic') await own.put(pathname, fetched.clone());
		return fetched;
	} catch (offline) {
		const page = request.mode === 'navigate' ? await found(own, start) : undefined;
		if (page) return page;
		throw offline;
	}
}

const found = (shelf: Cache, path: string): Promise<Response | undefined> =>
	shelf.match(path, { ignoreSearch: true });

async function onOthers(
	shelves: Shelves,
	shelf: string,
	path: string,
): Promise<Response | undefined> {
	if (!path.includes(FIXED)) return undefined;
	for (const name of await othersOn(shelves, shelf)) {
		const kept = await found(await shelves.open(name), path);
		if (kept) return kept;
	}
	return undefined;
}

async function othersOn(shelves: Shelves, shelf: string): Promise<string[]> {
	return (await shelves.keys()).filter((name) => name.startsWith(PREFIX) && name !== shelf);
}
