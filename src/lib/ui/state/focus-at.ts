import type { Path } from '../../job';
import { pathKey } from './edits';

/** What of a place takes the keyboard. */
const TAKES = 'input, select, textarea, button, summary';
/** Forms are fetched when they are wanted: so often is a field looked for, and so long apart. */
const TRIES = 40;
const APART = 50;

/**
 * Puts the keyboard into the field at this place of the job, once it is there; what it is folded
 * away in is unfolded. After a second the nearest thing round it will do. False where there is
 * none.
 */
export async function focusAt(path: Path): Promise<boolean> {
	for (let tries = 0; tries < TRIES; tries++) {
		const least = tries < TRIES / 2 ? path.length : 2;
		for (let depth = path.length; depth >= least; depth--) {
			const place = placeOf(path.slice(0, depth));
			if (place) return focusIn(place);
		}
		await new Promise((next) => setTimeout(next, APART));
	}
	return false;
}

function placeOf(path: Path): Element | null {
	return document.querySelector(`[data-at="${CSS.escape(pathKey(path))}"]`);
}

function focusIn(place: Element): boolean {
	for (let up: Element | null = place; up; up = up.parentElement) {
		if (up instanceof HTMLDetailsElement) up.open = true;
	}
	place.scrollIntoView({ block: 'nearest' });
	place.querySelector<HTMLElement>(TAKES)?.focus();
	return true;
}
