import { nth } from '../measure';

/** What one job knows of a thing it takes, without how much there is of it. */
export interface Bundle {
	/** Place of the job among all. */
	readonly job: number;
	readonly id: string;
	readonly name: string;
	/** All that is said of it: what differs in any of it is another thing. */
	readonly said: Readonly<Record<string, unknown>>;
	/** The same of its lines, by their marks. */
	readonly lines: ReadonlyMap<string, Readonly<Record<string, unknown>>>;
}

/** The same thing for several jobs, or for one alone. */
export interface Alike {
	/** Its mark and name among all: another one than in the job where another group has it. */
	readonly id: string;
	readonly name: string;
	readonly own: string;
	readonly jobs: readonly number[];
	readonly bundles: readonly Bundle[];
	/** Why it is not one with the one before of the same mark or name; '' where none is. */
	readonly unlike: string;
}

/**
 * Puts together what is the same in several jobs: same mark, and nothing said of it or of a
 * line of its that differs. Things alike in their mark only, or in their name only, stay apart
 * under marks and names of their own.
 *
 * @param tell what differs between two values of a field, in words
 */
export function alikeIn(
	bundles: readonly Bundle[],
	tags: readonly string[],
	tell: (field: string, a: unknown, b: unknown) => string,
): Alike[] {
	const groups: Bundle[][] = [];
	for (const bundle of bundles) {
		const home = groups.find(
			(g) => nth(g, 0).id === bundle.id && g.every((b) => difference(b, bundle, tell) === ''),
		);
		if (home) home.push(bundle);
		else groups.push([bundle]);
	}
	const ids = new Set<string>();
	const names = new Set<string>();
	return groups.map((members, i): Alike => {
		const first = nth(members, 0);
		const tag = nth(tags, first.job);
		const before = groups
			.slice(0, i)
			.map((g) => nth(g, 0))
			.find((b) => b.id === first.id);
		const namesake = groups
			.slice(0, i)
			.map((g) => nth(g, 0))
			.find((b) => b.name === first.name);
		const differs = before ? difference(before, first, tell) || SELDOM : '';
		return {
			id: free(ids, first.id, `${first.id}-${tag}`),
			name: free(names, first.name, `${first.name} (${tag})`),
			own: first.id,
			jobs: members.map((b) => b.job),
			bundles: members,
			unlike: differs || (namesake ? `one is marked ${namesake.id}, the other ${first.id}` : ''),
		};
	});
}

/** Two that are like the first of a group and unlike each other. */
const SELDOM = 'another line of it differs';

/** The mark itself where nobody has it yet. */
export function free(taken: Set<string>, mark: string, other: string): string {
	let own = taken.has(mark) ? other : mark;
	for (let n = 2; taken.has(own); n++) own = `${other}-${n}`;
	taken.add(own);
	return own;
}

/** What is said of one and not of the other, in words; '' for nothing. */
function difference(
	a: Bundle,
	b: Bundle,
	tell: (field: string, a: unknown, b: unknown) => string,
): string {
	const own = unlikeFields(a.said, b.said, tell);
	const lines = [...a.lines].flatMap(([id, line]) => {
		const other = b.lines.get(id);
		return other ? unlikeFields(line, other, tell).map((t) => `${t} (${id})`) : [];
	});
	return [...own, ...lines].join('; ');
}

function unlikeFields(
	a: Readonly<Record<string, unknown>>,
	b: Readonly<Record<string, unknown>>,
	tell: (field: string, a: unknown, b: unknown) => string,
): string[] {
	const fields = [...new Set([...Object.keys(a), ...Object.keys(b)])];
	return fields
		.filter((field) => JSON.stringify(a[field]) !== JSON.stringify(b[field]))
		.map((field) => tell(field, a[field], b[field]));
}
