import type { Path, Cover } from '../../../job';
import { liesIn, type Outline, type Point, circle, whereIs } from '../../../geometry';
import { ticks, snap, mm } from '../../../measure';
import { boardAsked, clothAsked, complain, say, type Bench } from '../bench';
import { placeShape, grownBy } from '../fit';
import type { CoverFigure, LayerFigure } from '../figures';
import { MAGNET_RIM } from './edge-distance';
import { spaced } from './spaced';

/*
 * A cover shares its line with the panel: each gives half the gap and its own cloth, so that from
 * board to board there are two cloths and the gap. Common practice, no source.
 */

export function coverFigures(bench: Bench, layers: readonly LayerFigure[]): CoverFigure[] {
	return bench.panel.covers.flatMap((c, i) => {
		const figure = coverFigure(bench, c, ['covers', i], layers);
		return figure ? [figure] : [];
	});
}

function coverFigure(
	bench: Bench,
	cover: Cover,
	path: Path,
	layers: readonly LayerFigure[],
): CoverFigure | null {
	const drawn = placeShape(cover.outline, bench.job.shop.ruler);
	complain(bench, [...path, 'outline'], drawn.complaints);
	const ledge = boardAsked(bench, cover.ledge.material, [...path, 'ledge', 'material']);
	const panelCloth = clothAsked(bench, bench.panel.cloth, ['cloth'])?.pressed ?? 0;
	const cloth = clothAsked(bench, cover.cloth ?? bench.panel.cloth, [...path, 'cloth']);
	if (drawn.outline === null || !ledge) return null;
	const own = cloth?.pressed ?? 0;
	const finished = grownBy(drawn.outline, -cover.gap / 2);
	const board = grownBy(drawn.outline, -cover.gap / 2 - own);
	const hole = grownBy(drawn.outline, cover.gap / 2 + panelCloth);
	const outer = hole && grownBy(hole, cover.ledge.outside);
	const inner = board && grownBy(board, -cover.ledge.inside);
	if (!finished || !board || !hole || !outer || !inner) {
		bench.log.stop(
			[...path, 'outline'],
			`${cover.name} is too small for its gap, cloth and ledge.`,
			'Make it larger, or the ledge narrower.',
		);
		return null;
	}
	return {
		id: cover.id,
		name: cover.name,
		cloth: cloth?.id ?? null,
		pressed: ticks(own),
		hole,
		board,
		finished,
		gap: cover.gap,
		boardGap: snap(own + cover.gap + panelCloth),
		ledge: { outer, inner, material: ledge.id, thickness: ledge.measured },
		finger: fingerHole(bench, cover, board, path),
		magnets: magnets(bench, cover, board, path),
		magnet: cover.lift.by === 'magnets' ? cover.lift.diameter : null,
		layers: layers.filter((l) => l.place === 'raised' && l.piece && liesIn(hole, l.piece)),
	};
}

/** At least this much board round a finger hole. Common practice, no source. */
const FINGER_RIM = mm(12);

function fingerHole(bench: Bench, cover: Cover, board: Outline, path: Path): Outline | null {
	if (cover.lift.by !== 'finger-hole') return null;
	const hole = circle(cover.lift.x, cover.lift.y, Math.round(cover.lift.diameter / 2));
	const rim = grownBy(hole, FINGER_RIM);
	if (!rim?.every((p) => whereIs(p, board) === 'inside'))
		bench.log.check(
			[...path, 'lift'],
			`The finger hole of ${cover.name} lies less than ${say(bench, FINGER_RIM)} from its edge, or off it.`,
			'Move it inwards; x and y are measured on the panel.',
		);
	return hole;
}

/**
 * Magnets in the middle of the rim that rests on the ledge, one near each corner and no farther
 * apart than asked.
 */
function magnets(bench: Bench, cover: Cover, board: Outline, path: Path): Point[] {
	if (cover.lift.by !== 'magnets') return [];
	const { diameter } = cover.lift;
	const { inside } = cover.ledge;
	if ((inside - diameter) / 2 < MAGNET_RIM)
		bench.log.check(
			[...path, 'lift', 'diameter'],
			`The magnets of ${cover.name} are ${say(bench, diameter)} across, and the rim they sit in is ${say(bench, inside)} wide: less than ${say(bench, MAGNET_RIM)} of board is left beside them.`,
			`Let the cover rest on its ledge by ${say(bench, diameter + 2 * MAGNET_RIM)} or more, or take smaller magnets.`,
		);
	const line = grownBy(board, -cover.ledge.inside / 2);
	return line ? spaced(line, cover.lift.spacing) : [];
}
