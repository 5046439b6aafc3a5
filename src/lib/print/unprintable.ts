import type { Problem } from '../job/problem';
import type { Plan } from '../plan';
import { EMPTY_BOX, runsOf } from './faces';

/** A drawing carried along in a file is never printed as text. */
const DRAWING = 'text';
const NAMED = 20;

/** The plan of a file, with what the printed page cannot show of the file's texts among its problems. */
export function forPaper(plan: Plan, file: unknown): Plan {
	const problems = unprintable(file);
	return problems.length === 0 ? plan : { ...plan, problems: [...plan.problems, ...problems] };
}

/** Texts with letters that no printed face has (Chinese, Japanese, Korean, pictures): a box stands for each on paper. */
export function unprintable(file: unknown): Problem[] {
	const problems: Problem[] = [];
	const stack: { readonly value: unknown; readonly path: Problem['path'] }[] = [
		{ value: file, path: [] },
	];
	for (let visit = stack.pop(); visit && problems.length < NAMED; visit = stack.pop()) {
		const { value, path } = visit;
		if (path.length > 40) continue; // refused by the reader already
		if (typeof value === 'string') {
			const boxes = path.at(-1) === DRAWING ? 0 : boxesIn(value);
			if (boxes > 0) problems.push(said(path, boxes));
		} else if (typeof value === 'object' && value !== null) {
			const entries = Object.entries(value) as [string, unknown][];
			for (const [key, inner] of entries.reverse())
				stack.push({ value: inner, path: [...path, Array.isArray(value) ? Number(key) : key] });
		}
	}
	return problems;
}

/** Plain Latin letters are in every face; only texts with others are looked at closely. */
const PLAIN = /^[\n\r\t -~]*$/;

function boxesIn(text: string): number {
	if (PLAIN.test(text)) return 0;
	const set = runsOf(text, 'regular')
		.map((run) => run.text)
		.join('');
	return set.split(EMPTY_BOX).length - text.split(EMPTY_BOX).length;
}

function said(path: Problem['path'], boxes: number): Problem {
	const letters = boxes === 1 ? '1 letter' : `${boxes} letters`;
	return {
		path,
		what: `This text holds ${letters} that no printed face has; on paper an empty box stands for each.`,
		fix: 'Read it on the screen, or write it in Latin, Greek, Cyrillic, Hebrew or Arabic letters as well.',
		kind: 'check',
	};
}
