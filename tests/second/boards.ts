import {
	boardsOf,
	cornersOf,
	inward,
	linesOf,
	meet,
	type Form,
	type Line,
	type Spot,
} from './section';

/*
 * What each wall of a box is cut to, worked from the numbers of the job: the ends of both its faces
 * are where lines meet.
 */

export type Joints = 'level-past' | 'upright-past' | 'mitre';

export interface WallSize {
	/** The rectangle to be cut, and the shorter of its two faces, along the side view. mm */
	readonly cut: number;
	readonly short: number;
	/** Saw tilts from square at both edges, degrees, the smaller one first. */
	readonly tilts: readonly number[];
}

export function wallsOf(
	form: Form,
	joints: Joints,
	thickness: (board: string) => number,
): Map<string, WallSize> {
	const names = boardsOf(form.kind);
	const lines = linesOf(cornersOf(form));
	const inner = lines.map((line, k) => inward(line, thickness(names[k]!)));
	return new Map(
		names.map((name, k) => {
			const at = (i: number): number => (i + names.length) % names.length;
			const ends = [at(k - 1), at(k + 1)].map((other) => ({
				past: reaches(lines, k, other, joints),
				outer: lines[other]!,
				inner: inner[other]!,
			}));
			const outside = ends.map((e) => meet(lines[k]!, e.past === false ? e.inner : e.outer));
			const inside = ends.map((e) => meet(inner[k]!, e.past === true ? e.outer : e.inner));
			return [name, sizeOf(lines[k]!, outside, inside, thickness(name))];
		}),
	);
}

/**
 * Does this board end at the outside of the other? The one that runs past does, but at an inward
 * corner it is the one that is stopped.
 */
function reaches(
	lines: readonly Line[],
	k: number,
	other: number,
	joints: Joints,
): boolean | 'mitred' {
	const past = isPast(lines[k]!, lines[other]!, joints);
	if (past === 'mitred') return past;
	const isNext = other === (k + 1) % lines.length;
	const [p, q] = isNext ? [lines[k]!, lines[other]!] : [lines[other]!, lines[k]!];
	const isInward = p.a * q.b - p.b * q.a < 0;
	return past !== isInward;
}

/** Does this board run past the other? The more level one does where level boards do. */
function isPast(own: Line, other: Line, joints: Joints): boolean | 'mitred' {
	if (joints === 'mitre') return 'mitred';
	const isLeveler = Math.abs(own.a) < Math.abs(other.a);
	return isLeveler === (joints === 'level-past');
}

function sizeOf(
	line: Line,
	outside: readonly Spot[],
	inside: readonly Spot[],
	thick: number,
): WallSize {
	// Along the board: square to the line's normal.
	const along = ({ x, y }: Spot): number => y * line.a - x * line.b;
	const [o, i] = [outside.map(along), inside.map(along)];
	const all = [...o, ...i];
	const lengths = [o, i].map((face) => Math.abs(face[1]! - face[0]!));
	return {
		cut: Math.max(...all) - Math.min(...all),
		short: Math.min(...lengths),
		tilts: [0, 1]
			.map((e) => (Math.atan(Math.abs(o[e]! - i[e]!) / thick) * 180) / Math.PI)
			.sort((a, b) => a - b),
	};
}
