import type { BoxSkin } from '../../design';
import { bounds } from '../../geometry';
import type { Carpet, Path, Problem } from '../../job';
import { mm, type Ruler, sayLength, showLength, snap, wholeMost } from '../../measure';

/** Less than this cannot be cut through in one stroke. Common practice, no source. */
const LEAST = mm(5);

/** Laps and turn-unders that no face of the box has room for, and laps too narrow to be cut. */
export function seamSizeProblems(skin: BoxSkin, wish: Carpet, ruler: Ruler, path: Path): Problem[] {
	const faces = [...skin.round, ...skin.ends].map((f) => {
		const { length, width } = bounds(f.outline);
		return { name: f.name, across: Math.min(length, width) };
	});
	const [small] = faces.sort((a, b) => a.across - b.across);
	if (!small) return [];
	const say = (n: number): string => showLength(snap(n), ruler);
	const over = (field: 'overlap' | 'margin', most: number, what: string): Problem[] =>
		wish[field] <= most
			? []
			: [
					{
						path: [...path, field],
						kind: 'check',
						what: `${what} is ${say(wish[field])}, and ${small.name} of ${skin.name} is only ${say(small.across)} across: the cloth would run over it.`,
						fix: `Give ${wholeMost(most, ruler)} or less.`,
					},
				];
	const thin: Problem[] =
		wish.overlap >= LEAST
			? []
			: [
					{
						path: [...path, 'overlap'],
						kind: 'note',
						what: `The seam overlap is ${say(wish.overlap)}: too little to cut through both layers in one stroke.`,
						fix: `Give ${sayLength(mm(20), ruler)} or so, unless the edges are to be butted as they are cut.`,
					},
				];
	return [
		...over('overlap', small.across / 2, 'The seam overlap'),
		...over('margin', small.across, 'The turn-under of the carpet'),
		...thin,
	];
}
