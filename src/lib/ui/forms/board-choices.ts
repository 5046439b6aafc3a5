import { valueAt } from '../../job';
import { listAt } from '../state';

const SIDES = ['front', 'back', 'top', 'bottom', 'left', 'right'];

/** The boards a box of this form has, by the names the job file gives them. */
export function boardChoices(shape: unknown): string[] {
	switch (valueAt(shape, ['kind'])) {
		case 'stepped':
			return [...SIDES, 'step-face', 'step-top'];
		case 'truncated':
			return [...SIDES, 'cut'];
		case 'free':
			return [...sides(shape), 'left', 'right'];
		default:
			return SIDES;
	}
}

/**
 * A drawing may have more corners than were typed; how many is known once it has been read, so all
 * are offered.
 */
function sides(shape: unknown): string[] {
	const typed = listAt(shape, ['corners']).length;
	const count = valueAt(shape, ['drawing']) ? 24 : typed;
	return Array.from({ length: count }, (_, i) => `side-${i + 1}`);
}
