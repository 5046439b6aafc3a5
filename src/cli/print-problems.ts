import { showHidden, pathText, type Problem } from '../lib/job';

const MARKS: Readonly<Record<Problem['kind'], string>> = {
	stop: '',
	check: ' (planned as asked, look at it)',
	note: ' (a note: nothing is wrong)',
};

/** One problem as two lines for a person: where and what, then what would be right. */
export function problemText(problem: Problem): string {
	const where = showHidden(pathText(problem.path)) || 'the file';
	return `${where}: ${problem.what}${MARKS[problem.kind]}\n    ${problem.fix}\n`;
}

/** The same as a value for a machine. */
export function problemJson({ path, what, fix, kind }: Problem): object {
	return { path: pathText(path), what, fix, kind };
}
