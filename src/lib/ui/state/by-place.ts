import type { Problem } from '../../job';
import { pathKey } from './edits';

/** Problems by the place they speak of (`pathKey`). */
export function byPlace(problems: readonly Problem[]): Map<string, Problem[]> {
	const places = new Map<string, Problem[]>();
	for (const problem of problems) {
		const key = pathKey(problem.path);
		places.set(key, [...(places.get(key) ?? []), problem]);
	}
	return places;
}
