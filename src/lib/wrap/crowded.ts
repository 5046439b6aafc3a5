import { snap, showLength, type Ruler } from '../measure';
import type { Covering } from '../design';
import type { Path, Problem } from '../job';
import type { Flap } from './girth';
import type { ClothShape } from './marks';

/** The edge of the outline or of a window, and where in the panel it is asked for. */
interface Edge {
	readonly flaps: readonly Flap[];
	readonly where: string;
	/** The same where it is about a corner. */
	readonly corner: string;
	readonly path: Path;
}

/**
 * Flaps that come out shorter than asked: where edges face each other nearer than both turn-unders,
 * and in corners rounded tighter than the turn-under is wide.
 */
export function crowded(
	covering: Covering,
	shape: ClothShape,
	ruler: Ruler,
	path: Path,
): Problem[] {
	const { name } = covering;
	const edges: Edge[] = [
		{ flaps: shape.flaps, where: `${name}: in a slot of the outline`, corner: `${name}:`, path },
		...shape.windows.map(({ flaps }, i): Edge => {
			const { name: window = 'a window', index } = covering.windows[i] ?? {};
			const at = index === undefined ? path : [...path, 'windows', index];
			const where = `${name}: in ${window}`;
			return { flaps, where, corner: where, path: at };
		}),
	];
	return edges.flatMap((edge) => {
		const short = edge.flaps.filter((f) => f.folds && f.total < f.wanted - 1);
		const corners = short.filter(onTheBack);
		const facing = short.filter((f) => !onTheBack(f));
		return [
			...(facing.length > 0 ? [tooNear(edge, facing, ruler)] : []),
			...inCorner(edge, corners, ruler),
		];
	});
}

/**
 * In a hollow curve the flaps are slit and reach as far as its middle: that holds wherever some of
 * it comes to lie on the back.
 */
const onTheBack = ({ span, total }: Flap): boolean =>
	span.arc !== null && span.arc.sweep < 0 && total > span.cloth.build;

const worstOf = (flaps: readonly Flap[]): Flap =>
	flaps.reduce((a, b) => (b.total / b.wanted < a.total / a.wanted ? b : a));

function tooNear({ where, path }: Edge, facing: readonly Flap[], ruler: Ruler): Problem {
	const worst = worstOf(facing);
	const left = showLength(snap(worst.total), ruler);
	const wanted = showLength(snap(worst.wanted), ruler);
	return {
		path,
		kind: 'check',
		what: `${where} only ${left} of cloth can be turned under; ${wanted} is asked for.`,
		fix: `Make it wider, take a smaller turn-under there, or leave its edge bare.`,
	};
}

function inCorner({ corner, path }: Edge, corners: readonly Flap[], ruler: Ruler): Problem[] {
	if (corners.length === 0) return [];
	const worst = worstOf(corners);
	const say = (n: number): string => showLength(snap(n), ruler);
	const numbers = worst.span.cloth.numbers ?? [];
	const between = numbers.length === 2 ? ` between edges ${numbers.join(' and ')}` : '';
	return [
		{
			path,
			kind: 'note',
			what:
				`${corner} the inside corner${between} of radius ${say(worst.span.arc?.radius ?? 0)} leaves ${say(worst.total)} of cloth ` +
				`to be turned under instead of ${say(worst.wanted)}.`,
			fix: 'Nothing to do: it is slit there, and holds by what lies on the back.',
		},
	];
}
