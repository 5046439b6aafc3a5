import type { Drawing, Mark } from './drawing';
import { rect } from './path';
import { wrapped } from './text-width';

/** Size of the box that stands in for a drawing, mm; half a column of text high. */
const ROOM = { width: 160, height: 30 };
const SIZE = 3.2;
const LINE = 4.6;

/**
 * A drawing; where it cannot be made, a box in its place that says so. A fault of ours is caught
 * here, before the edge, because whoever stands at the saw needs all the other pages.
 */
export function orStandIn(title: string, make: () => Drawing): Drawing {
	try {
		return sound(make());
	} catch (error) {
		return standIn(title, faultText(error));
	}
}

/** What went wrong, without the word that marks it as ours. */
export function faultText(error: unknown): string {
	const text = error instanceof Error ? error.message : String(error);
	return text.replace(/^bug: /, '');
}

/** The drawing as it is. Throws `bug:` where a place in it is no number: no pen can set that. */
export function sound<T extends { readonly marks: readonly Mark[] }>(drawing: T): T {
	if (!drawing.marks.every(isPlaced))
		throw new Error('bug: a place in a drawing that is no number');
	return drawing;
}

function isPlaced(mark: Mark): boolean {
	if (mark.kind === 'text') return [mark.x, mark.y, mark.size].every(Number.isFinite);
	if (mark.kind === 'photo')
		return [mark.x, mark.y, mark.width, mark.height].every(Number.isFinite);
	return mark.steps.every((step) => step.every((n, i) => i === 0 || Number.isFinite(n)));
}

export const UNDRAWN =
	'This drawing could not be made, by a fault of the planner. Do not guess at it: everything else stands, and the job file shows the fault to whoever mends it.';

function standIn(title: string, fault: string): Drawing {
	const lines = wrapped(`${UNDRAWN} (${fault})`, ROOM.width - 8, SIZE);
	const height = Math.max(ROOM.height, lines.length * LINE + 8);
	return {
		...{ ...ROOM, height, title, fault },
		marks: [
			{ kind: 'path', steps: rect(0.5, 0.5, ROOM.width - 1, height - 1), line: 'wide' },
			...lines.map((text, i): Mark => ({
				...{ kind: 'text', text, x: 4, y: 4 + (i + 0.75) * LINE, size: SIZE },
			})),
		],
	};
}
