import type { Random } from '../../../lib/nest';
import { mutateTree } from './mutate';
import { pick, RAW } from './strange';
import { tornText } from './torn-text';

type Tree = Record<string, unknown>;

/** Jobs in good order as their files hold them: whole ones, and cut down to one thing each. */
export interface JobTexts {
	readonly whole: readonly string[];
	readonly small: readonly string[];
}

const LISTS = ['boxes', 'panels', 'parts'] as const;
/** One in so many begins with a whole job; the rest with one box, one panel or a few parts. */
const WHOLE = 60;
const JSON_WORDS: readonly string[] = [
	...[
		'{',
		'}',
		'[',
		']',
		'"',
		':',
		',',
		'null',
		'NaN',
		'\\u0000',
		'\\',
		'"__proto__":',
		'1e999',
		'//',
	],
];

export function jobTexts(files: readonly string[]): JobTexts {
	return { whole: files, small: files.flatMap(cutDown) };
}

function cutDown(text: string): string[] {
	const job = JSON.parse(text) as Tree;
	return LISTS.flatMap((list) => {
		const entries = Array.isArray(job[list]) ? (job[list] as unknown[]) : [];
		const cuts = list === 'parts' ? [entries.slice(0, 6)] : entries.map((entry) => [entry]);
		const without = Object.fromEntries(LISTS.map((other) => [other, []]));
		return cuts
			.filter((cut) => cut.length > 0)
			.map((cut) => JSON.stringify({ ...job, ...without, [list]: cut }));
	});
}

export function jobCase(jobs: JobTexts, dice: Random): string {
	const tree = JSON.parse(pick(dice.int(WHOLE) ? jobs.small : jobs.whole, dice)) as Tree;
	mutateTree(tree, pick([1, 1, 2, 3, 5, 10], dice), dice);
	const text = JSON.stringify(tree).replace(RAW, (_, raw: string) => raw);
	return dice.int(12) ? text : tornText(text, 1 + dice.int(2), JSON_WORDS, dice);
}
