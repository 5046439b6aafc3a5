import type { Path, Ring } from '../../../job';
import { ticks } from '../../../measure';
import { boardAsked, clothAsked, complain, type Bench } from '../bench';
import { placeShape, grownBy } from '../fit';
import type { RingFigure } from '../figures';

export function ringFigures(bench: Bench): RingFigure[] {
	return bench.panel.rings.flatMap((r, i) => {
		const figure = ringFigure(bench, r, ['rings', i]);
		return figure ? [figure] : [];
	});
}

/**
 * A ring round a pass-through: finished it laps over the wall and stands a lip into the hole; its
 * board is smaller by the cloth on both lines. Let in, the rebate is as deep as ring, cloth on its
 * face and the cloth of the wall together, and as wide as the finished ring and the wall's cloth
 * turned down into it. Common practice, no source.
 */
function ringFigure(bench: Bench, ring: Ring, path: Path): RingFigure | null {
	const drawn = placeShape(ring.outline, bench.job.shop.ruler);
	complain(bench, [...path, 'outline'], drawn.complaints);
	const board = boardAsked(bench, ring.material, [...path, 'material']);
	const cloth = clothAsked(bench, ring.cloth, [...path, 'cloth'])?.pressed ?? 0;
	const wall = clothAsked(bench, ring.wallCloth, [...path, 'wallCloth'])?.pressed ?? 0;
	if (drawn.outline === null || !board) return null;
	const hole = drawn.outline;
	const outer = grownBy(hole, ring.lap);
	const inner = grownBy(hole, -ring.lip);
	const boardOuter = grownBy(hole, ring.lap - cloth);
	const boardInner = grownBy(hole, -ring.lip + cloth);
	const rebate = grownBy(hole, ring.lap + wall);
	if (
		!outer ||
		!inner ||
		!boardOuter ||
		!boardInner ||
		!rebate ||
		ring.lap + ring.lip <= 2 * cloth
	) {
		bench.log.stop(
			path,
			`${ring.name} has no board left between its two lines.`,
			'Give it more lap, or less lip.',
		);
		return null;
	}
	const depth = ticks(board.measured + cloth + wall);
	return {
		id: ring.id,
		name: ring.name,
		hole,
		board: { outer: boardOuter, inner: boardInner },
		finished: { outer, inner },
		thickness: board.measured,
		rebate: ring.letIn ? { depth, outline: rebate } : null,
	};
}
