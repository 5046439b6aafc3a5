import { beforeEach, describe, expect, it } from 'vitest';
import {
	answerFrom,
	clearOthers,
	keepWhole,
	mayClear,
	mayTakeOver,
	shelfOf,
	type Shelves,
	type Version,
} from '../../src/worker/app-shelf';

const HOST = 'http://localhost';

/** What the network has, by address. */
let network: Map<string, string>;
let shelves: Shelves;

function shelf(): Cache {
	const kept = new Map<string, Response>();
	const cache: Partial<Cache> = {
		match: async (path) => kept.get(String(path))?.clone(),
		put: async (path, response) => void kept.set(String(path), response),
		addAll: async (paths) => {
			const all = await Promise.all([...paths].map((path) => fetched(String(path))));
			if (all.some(({ ok }) => !ok)) throw new TypeError('not all');
			for (const [i, path] of [...paths].entries()) kept.set(String(path), all[i]!);
		},
	};
	return cache as Cache;
}

function makeShelves(): Shelves {
	const all = new Map<string, Cache>();
	return {
		open: async (name) => {
			if (!all.has(name)) all.set(name, shelf());
			return all.get(name)!;
		},
		keys: async () => [...all.keys()],
		delete: async (name) => all.delete(name),
	};
}

async function fetched(path: string): Promise<Response> {
	const text = network.get(path);
	return new Response(text ?? 'gone', { status: text === undefined ? 404 : 200 });
}

function version(...files: string[]): Version {
	return { shelf: shelfOf('1.0', files), files, start: '/' };
}
/** Addresses the host itself was asked for. */
let askedAnew: string[] = [];
function anew(path: string): string {
	askedAnew.push(path);
	return path;
}

/** What a page gets under this version. */
async function got(under: Version, path: string): Promise<string> {
	const request = new Request(`${HOST}${path}`);
	const answer = await answerFrom(shelves, under, request, () => fetched(path));
	return answer.ok ? answer.text() : String(answer.status);
}

const OLD = version('/', '/_app/immutable/old.js', '/_app/immutable/lazy-old.js');
const NEW = version('/', '/_app/immutable/new.js', '/_app/immutable/lazy-new.js');

/** As a build lies on the host. */
function publish({ files }: Version, page: string): void {
	network = new Map(files.map((path) => [path, path === '/' ? page : `script ${path}`]));
}

beforeEach(async () => {
	shelves = makeShelves();
	publish(OLD, 'old page');
	await keepWhole(shelves, OLD, anew);
	publish(NEW, 'new page');
});

describe('a new version beside an old one', () => {
	it('has a shelf of its own, though both carry the same name', () => {
		expect(OLD.shelf).not.toBe(NEW.shelf);
		expect(version(...OLD.files).shelf).toBe(OLD.shelf);
	});

	it('takes nothing from a page of the old one: its page and its later chunks are there', async () => {
		await keepWhole(shelves, NEW, anew);
		expect(await got(OLD, '/')).toBe('old page');
		expect(await got(OLD, '/_app/immutable/lazy-old.js')).toBe(
			'script /_app/immutable/lazy-old.js',
		);
	});

	it('serves its own page, and the chunks of an old page that is still open', async () => {
		await keepWhole(shelves, NEW, anew);
		expect(await got(NEW, '/')).toBe('new page');
		expect(await got(NEW, '/_app/immutable/lazy-old.js')).toBe(
			'script /_app/immutable/lazy-old.js',
		);
		await clearOthers(shelves, NEW);
		expect(await got(NEW, '/_app/immutable/lazy-old.js')).toBe('404');
		expect(await got(NEW, '/_app/immutable/lazy-new.js')).toContain('script');
	});

	it('asks the host itself for its page, whose name is as before', async () => {
		askedAnew = [];
		await keepWhole(shelves, NEW, anew);
		expect(askedAnew).toEqual(['/']);
	});

	it('that cannot be fetched whole is not kept, and the old one stands', async () => {
		network.delete('/_app/immutable/lazy-new.js');
		await expect(keepWhole(shelves, NEW, anew)).rejects.toThrow('not all');
		expect(await got(OLD, '/')).toBe('old page');
	});

	it('takes over when asked by the only window, never under another', () => {
		expect([0, 1, 2, 3].map(mayTakeOver)).toEqual([true, true, false, false]);
	});

	it('clears the old one when a page of its own stands alone', () => {
		const page = ['/_app/immutable/new.js'];
		expect(mayClear(NEW, page, 1)).toBe(true);
		expect(mayClear(NEW, page, 2)).toBe(false);
		expect(mayClear(NEW, ['/_app/immutable/old.js'], 1)).toBe(false);
		expect(mayClear(NEW, [], 1)).toBe(false);
	});
});
