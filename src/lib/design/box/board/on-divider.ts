import type { Path } from '../../../job';
import type { ProblemLog } from '../../problem-log';
import type { Point3 } from '../solid';
import type { Board } from './board';

/** 2 of 'divider-2'; null of a board of the form. */
export function dividerNumber(key: string): number | null {
	const [, digits] = /^divider-(\d+)$/.exec(key) ?? [];
	return digits === undefined ? null : Number(digits);
}

/** Which way an axis of the box points: 'to the left', 'up' and so on. */
export function wayOf({ x, y, z }: Point3): string {
	if (Math.abs(x) > 0.5) return x > 0 ? 'to the right' : 'to the left';
	if (Math.abs(y) > 0.5) return y > 0 ? 'to the back' : 'to the front';
	return z > 0 ? 'up' : 'down';
}

/** Says that the side asked for makes no difference on a wall. */
export function sayNoSide(
	asked: { readonly board: string; readonly into?: 'far' | 'near' },
	path: Path,
	log: ProblemLog,
): void {
	if (asked.into !== 'near' || dividerNumber(asked.board) !== null) return;
	log.note(
		path,
		`On the board '${asked.board}' everything goes into the box: the side asked for has no effect.`,
		'Name a divider, or leave the side as it was.',
	);
}

/** Why nothing can be placed on a board, and what would be right. */
export function noSuchBoard(
	boards: readonly Board[],
	key: string,
	asked: number,
): [what: string, fix: string] {
	const number = dividerNumber(key);
	if (number === null) return [`This form has no board '${key}'.`, 'Choose one of its own walls.'];
	if (number > asked)
		return [
			`The box has no divider ${number}; ${asked === 0 ? 'it has none' : `it has ${asked}`}.`,
			'Name one that is in its list of dividers, or add it there.',
		];
	const made = boards.filter((b) => b.divider === number).length;
	if (made === 0)
		return [
			`Divider ${number} was refused, so nothing can be mounted on it.`,
			'Put the divider right, or choose another board.',
		];
	return [
		`Divider ${number} stands in ${made} chambers, a board in each: which of them is meant is open.`,
		'List it once for each chamber, said by its own Only in chamber.',
	];
}
