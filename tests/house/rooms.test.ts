import { readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { describe, expect, test } from 'vitest';
import { importsOf, ROOT, sources, target } from './sources';

/*
 * Rooms within rooms: every folder of the library is a room, small enough to see at a glance.
 * Others enter it by its contents page; inside, nobody goes through that page, and no arrow leads
 * back.
 */

/** Folders that hold rooms and are none themselves: nobody enters them as a whole. */
const FLOORS = ['src/lib', 'src/lib/ui', 'src/lib/ui/chapters', 'src/cli'];
/** Files beside the contents page. */
const MOST = 14;
/**
 * A form holds fields, lists and kinds, and each of these may hold a form: that is what a form is.
 */
const FORMS_IN_FORMS = 'src/lib/ui/forms';

const files = sources('src').filter(({ path }) => !path.endsWith('.d.ts'));
const folder = posix.dirname;
const isRoom = (path: string): boolean =>
	(path.startsWith('src/lib/') || path.startsWith('src/cli/')) && !FLOORS.includes(path);
const isPage = (path: string): boolean => path.endsWith('/index.ts');
const isUnder = (path: string, room: string): boolean => path.startsWith(`${room}/`);

interface Edge {
	readonly from: string;
	readonly to: string;
	readonly names: readonly string[];
	readonly handsOn: boolean;
	readonly onDemand: boolean;
}

const edges: readonly Edge[] = files.flatMap((file) =>
	importsOf(file).flatMap((found) => {
		const to = target(file.path, found.from);
		return to?.startsWith('src/') && /\.(ts|svelte)$/.test(to)
			? [{ from: file.path, to, ...pick(found) }]
			: [];
	}),
);

function pick({ names, handsOn, onDemand }: Omit<Edge, 'from' | 'to'>): Omit<Edge, 'from' | 'to'> {
	return { names, handsOn, onDemand };
}

/** The outermost room that holds the one file and not the other: the one that is entered. */
function entered(from: string, to: string): string | null {
	const steps = folder(to).split('/');
	const rooms = steps.map((_, i) => steps.slice(0, i + 1).join('/'));
	return rooms.find((room) => isRoom(room) && !isUnder(from, room)) ?? null;
}

/** Everything that leads back to itself among the files and rooms of one folder. */
function circles(at: string): string[] {
	const unit = (path: string): string => path.slice(at.length + 1).split('/')[0] ?? '';
	const uses = new Map<string, Set<string>>();
	for (const { from, to } of edges) {
		if (!isUnder(from, at) || !isUnder(to, at) || isPage(from) || unit(from) === unit(to)) continue;
		uses.set(unit(from), (uses.get(unit(from)) ?? new Set()).add(unit(to)));
	}
	return [...uses.keys()].filter((start) => reaches(uses, start)).map((name) => `${at}/${name}`);
}

function reaches(uses: ReadonlyMap<string, ReadonlySet<string>>, start: string): boolean {
	const seen = new Set<string>();
	const open = [...(uses.get(start) ?? [])];
	for (let here = open.pop(); here !== undefined; here = open.pop()) {
		if (here === start) return true;
		if (seen.has(here)) continue;
		seen.add(here);
		open.push(...(uses.get(here) ?? []));
	}
	return false;
}

const folders = [...new Set(files.map(({ path }) => folder(path)))];
const tree = [...new Set(folders.flatMap((path) => [path, folder(path)]))].filter((path) =>
	path.startsWith('src/'),
);

describe('rooms within rooms', () => {
	test('each is small enough to see at a glance', () => {
		const sizes = folders.map((path) => ({
			path,
			size: files.filter((file) => folder(file.path) === path && !isPage(file.path)).length,
		}));
		expect(sizes.filter(({ size }) => size > MOST)).toEqual([]);
	});

	test('others enter by the contents page; nobody inside goes through it', () => {
		const wrong = edges.filter(({ from, to, onDemand, handsOn }) => {
			// what is fetched when it is needed is fetched by itself
			if (onDemand || handsOn) return false;
			const room = entered(from, to);
			return room === null ? isPage(to) : to !== `${room}/index.ts`;
		});
		expect(wrong.map(({ from, to }) => `${from} uses ${to}`)).toEqual([]);
	});

	test('a contents page hands on, from its own files and the pages of its rooms, and does nothing else', () => {
		const pages = files.filter(({ path }) => isPage(path));
		expect(pages.length).toBeGreaterThan(40);
		const busy = pages.filter(({ text }) => {
			const rest = text
				.replace(/\/\*[\s\S]*?\*\//g, '')
				.replace(/export\s+(type\s+)?\{[^}]*\}\s+from\s+'[^']+';/g, '');
			return rest.trim() !== '';
		});
		expect(busy.map(({ path }) => path)).toEqual([]);
		const far = edges.filter(({ from, to, handsOn }) => {
			if (!handsOn || !isPage(from)) return false;
			const beside = folder(to) === folder(from);
			return !beside && !(isPage(to) && folder(folder(to)) === folder(from));
		});
		expect(far.map(({ from, to }) => `${from} hands on ${to}`)).toEqual([]);
	});

	test('only contents pages hand on, and the door of the schema library', () => {
		const wrong = edges.filter(({ from, handsOn }) => handsOn && !isPage(from));
		expect(wrong.map(({ from }) => from)).toEqual([]);
		const vague = files.filter(({ path }) => /\/(utils?|helpers?|common|misc)(\.ts|\/)/.test(path));
		expect(vague.map(({ path }) => path)).toEqual([]);
	});

	test('a contents page names what somebody outside takes, and no more', () => {
		const taken = new Map<string, Set<string>>();
		for (const { from, to, names } of edges)
			if (isPage(to))
				for (const name of names)
					if (!isUnder(from, folder(to)) || isPage(from))
						taken.set(to, (taken.get(to) ?? new Set()).add(name));
		const idle = files
			.filter(({ path }) => isPage(path))
			.flatMap(({ path, text }) =>
				[...text.matchAll(/export\s+(?:type\s+)?\{([^}]*)\}/g)]
					.flatMap(([, list]) => (list ?? '').split(','))
					.map((name) =>
						name
							.trim()
							.replace(/^type\s+/, '')
							.replace(/^\w+\s+as\s+/, ''),
					)
					.filter((name) => name !== '' && !taken.get(path)?.has(name))
					.map((name) => `${path}: ${name}`),
			);
		expect(idle).toEqual([]);
	});

	test.each(tree.filter((path) => path !== FORMS_IN_FORMS))('%s: no arrow leads back', (path) => {
		expect(circles(path)).toEqual([]);
	});

	test('the map in the guide names every room and no other', () => {
		const guide = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8');
		const map = guide.slice(guide.indexOf('## The map'), guide.indexOf('## Running it'));
		const firsts = map.split('\n').map((line) => (line.startsWith('| ') ? line.split('|')[1] : ''));
		const named = firsts.flatMap((cell) => [...(cell ?? '').matchAll(/`([a-z/-]+)`/g)]);
		const rooms = tree.filter((path) => path.startsWith('src/lib/'));
		expect(named.map(([, room]) => `src/lib/${room}`).sort()).toEqual([...new Set(rooms)].sort());
	});

	test('one exported name has one meaning', () => {
		const homes = new Map<string, Set<string>>();
		const named =
			/^export (?:declare )?(?:async )?(?:function\*?|class|interface|type|const|enum|let) (\w+)/gm;
		for (const { path, text } of files) {
			if (!path.endsWith('.ts') || /^src\/(routes|setup)\//.test(path)) continue;
			for (const [, name] of text.matchAll(named))
				homes.set(name!, (homes.get(name!) ?? new Set()).add(path));
		}
		const shared = [...homes].filter(([, paths]) => paths.size > 1);
		expect(shared.map(([name, paths]) => `${name}: ${[...paths].join(', ')}`)).toEqual([]);
	});
});
