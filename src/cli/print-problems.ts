import { showHidden, pathText, type Problem } from '../lib/job';

/** One problem as two lines for a person: where and what, then what would be right. */
export function problemText(problem: Problem): string {
	const where = showHidden(pathText(problem.path)) || 'the file';
	const mark = problem.kind === 'check' ? ' (planned as asked, look at it)' : '';
	return `${where}: ${problem.what}${mark}\n    ${problem.fix}\n`;
}

/** The same as a value for a machine. */
export function problemJson(problem: Problem): object {
	return { ...problem, path: pathText(problem.path) };
}
