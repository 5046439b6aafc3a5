import { at, listAt } from '../state/path';

const SIDES = ['front', 'back', 'top', 'bottom', 'left', 'right'];

/** The boards a box of this form has, by the names the job file gives them. */
export function boardChoices(shape: unknown): string[] {
	switch (at(shape, ['kind'])) {
		case 'stepped':
			return [...SIDES, 'step-face', 'step-top'];
		case 'truncated':
			return [...SIDES, 'cut'];
		case 'free':
			return [...listAt(shape, ['corners']).map((_, i) => `side-${i + 1}`), 'left', 'right'];
		default:
			return SIDES;
	}
}
