import { type Path, type Problem, textsIn } from '../../job';
import type { Plan } from '../../plan';
import { EMPTY_BOX, faceRuns } from './faces';

const NAMED = 20;

/**
 * The plan of a file, with what the printed page cannot show of the file's texts among its
 * problems.
 */
export function forPaper(plan: Plan, file: unknown): Plan {
	const problems = unprintable(file);
	return problems.length === 0 ? plan : { ...plan, problems: [...plan.problems, ...problems] };
}

/**
 * Texts with letters that no printed face has (Chinese, Japanese, Korean, pictures): a box stands
 * for each on paper.
 */
export function unprintable(file: unknown): Problem[] {
	const problems: Problem[] = [];
	for (const { text, path } of textsIn(file)) {
		const boxes = boxesIn(text);
		if (boxes > 0) problems.push(said(path, boxes));
		if (problems.length === NAMED) break;
	}
	return problems;
}

/** Plain Latin letters are in every face; only texts with others are looked at closely. */
const PLAIN = /^[\n\r\t -~]*$/;

function boxesIn(text: string): number {
	if (PLAIN.test(text)) return 0;
	const set = faceRuns(text, 'regular')
		.map((run) => run.text)
		.join('');
	return set.split(EMPTY_BOX).length - text.split(EMPTY_BOX).length;
}

function said(path: Path, boxes: number): Problem {
	const letters = boxes === 1 ? '1 letter' : `${boxes} letters`;
	return {
		path,
		what: `This text holds ${letters} that no printed face has; on paper an empty box stands for each.`,
		fix: 'Read it on the screen, or write it in Latin, Greek, Cyrillic, Hebrew or Arabic letters as well.',
		kind: 'check',
	};
}
