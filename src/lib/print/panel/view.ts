import type { Drawing, Mark } from '../drawing';
import { scaleText, TEXT, words, type Stage } from '../marks';

/** Height of one line under a drawing, mm. */
export const NOTE = 4.4;

/** Lines in words at the foot of a stage; its lower margin must hold {@link NOTE} for each. */
export function footNotes(lines: readonly string[], stage: Stage): Mark[] {
	return lines.map((t, i) => words(2, stage.height - (lines.length - i) * NOTE + 2.4, t));
}

/** The marks of a stage as a drawing, its scale in the upper right corner. */
export function viewOn(stage: Stage, title: string, marks: readonly Mark[]): Drawing {
	const scale = words(stage.width - 1, TEXT + 1, scaleText(stage), {
		anchor: 'end',
		ink: 'pencil',
	});
	return { width: stage.width, height: stage.height, title, marks: [...marks, scale] };
}
