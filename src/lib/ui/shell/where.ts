import { type Problem, type Path, valueAt } from '../../job';

/** The page a problem's place is edited on. */
export function pageOf(path: Path): 'job' | 'rack' | 'shop' {
	if (path[0] === 'stock') return 'rack';
	return path[0] === 'shop' ? 'shop' : 'job';
}

/** A problem's place in words: 'Bench box, width'. */
export function placeOf(file: unknown, path: Path): string {
	const words: string[] = [];
	let here: Path = [];
	for (const step of path) {
		here = [...here, step];
		if (typeof step === 'number') {
			const thing = valueAt(file, here) as { name?: unknown; id?: unknown } | undefined;
			const name = thing?.name ?? thing?.id;
			words[words.length - 1] =
				typeof name === 'string' && name !== '' ? name : `${words.at(-1) ?? ''} ${step + 1}`;
		} else words.push(step.replace(/([A-Z])/g, ' $1').toLowerCase());
	}
	const text = words.join(', ');
	return text === '' ? 'The file' : text.charAt(0).toUpperCase() + text.slice(1);
}

const WEIGHTS: Readonly<Record<Problem['kind'], number>> = { stop: 0, check: 1, note: 2 };

/** Problems that stop something first, then those to check, notes last. */
export function byWeight(problems: readonly Problem[]): Problem[] {
	return problems.toSorted((a, b) => WEIGHTS[a.kind] - WEIGHTS[b.kind]);
}
