import { type Path, type Problem, troublesOf } from '../../job';
import type { Chapter } from './chapters';

/** How many problems each chapter has to show on its stub: where one would look for them. */
export function problemCounts(problems: readonly Problem[]): Record<Chapter, number> {
	const counts: Record<Chapter, number> = {
		build: 0,
		boards: 0,
		cloth: 0,
		order: 0,
		quote: 0,
		print: 0,
	};
	for (const { path } of troublesOf(problems)) counts[chapterFor(path)]++;
	return counts;
}

function chapterFor(path: Path): Chapter {
	if (path[0] === 'pinned' || path[0] === 'byHand') return 'boards';
	if (path[0] === 'pulled') return 'cloth';
	if (path[0] === 'used') return 'order';
	if (path[0] === 'took') return 'quote';
	if (path[0] !== 'stock') return 'build';
	if (path[1] === 'cloths' || path[1] === 'rolls') return 'cloth';
	return path[1] === 'sundries' ? 'order' : 'boards';
}
