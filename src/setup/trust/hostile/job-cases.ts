import type { Random } from '../../../lib/nest';
import { mutateTree } from './mutate';
import { pick, RAW } from './strange';
import { tornText } from './torn-text';

type Tree = Record<string, unknown>;

/**
 * Jobs in good order as their files hold them: whole ones, and cut down to one box, one panel or a
 * few parts.
 */
export interface JobTexts {
	readonly whole: readonly string[];
	readonly boxes: readonly string[];
	readonly panels: readonly string[];
	readonly parts: readonly string[];
}

const LISTS = ['boxes', 'panels', 'parts'] as const;
/** What a case begins with: drawing a box takes ten times the work of drawing a few parts. */
const BEGUN: readonly (keyof JobTexts)[] = ['boxes', 'panels', 'panels', 'parts', 'parts'];
/** One in so many begins with a whole job. */
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
	const [boxes, panels, parts] = LISTS.map((list) => files.flatMap((file) => cutDown(file, list)));
	return { whole: files, boxes: boxes ?? [], panels: panels ?? [], parts: parts ?? [] };
}

/** The job with nothing to make but one entry of this list, or a few parts. */
function cutDown(text: string, list: (typeof LISTS)[number]): string[] {
	const job = JSON.parse(text) as Tree;
	const entries = Array.isArray(job[list]) ? (job[list] as unknown[]) : [];
	const cuts = list === 'parts' ? [entries.slice(0, 6)] : entries.map((entry) => [entry]);
	const without = Object.fromEntries(LISTS.map((other) => [other, []]));
	return cuts
		.filter((cut) => cut.length > 0)
		.map((cut) => JSON.stringify({ ...job, ...without, [list]: cut }));
}

export function jobCase(jobs: JobTexts, dice: Random): string {
	const tree = JSON.parse(pick(jobs[dice.int(WHOLE) ? pick(BEGUN, dice) : 'whole'], dice)) as Tree;
	mutateTree(tree, pick([1, 1, 2, 3, 5, 10], dice), dice);
	const text = JSON.stringify(tree).replace(RAW, (_, raw: string) => raw);
	return dice.int(12) ? text : tornText(text, 1 + dice.int(2), JSON_WORDS, dice);
}
