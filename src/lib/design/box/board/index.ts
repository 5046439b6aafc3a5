export {
	type Board,
	boardName,
	boardOf,
	type Halving,
	type Hole,
	type HolePattern,
	isDrilled,
	type Role,
	wallOf,
} from './board';
export { letter } from './letters';
export { weighBoard } from './moment';
export {
	along,
	bradsOf,
	needs,
	SCREW_FROM_END,
	screwFromEnd,
	screwsOf,
	seamNeeds,
	squareMetres,
} from './needs';
export { boardObstacle, boundsOf, mayTouch, type Obstacle, rodObstacle } from './obstacle';
export { dividerNumber, noSuchBoard, sayNoSide, wayOf } from './on-divider';
export { hull, kg, massOf, partOf, partRectOf, sideOf, woodOf } from './part-of';
export {
	edgeOfHole,
	faceOf,
	facesToFill,
	liesOn,
	liesOnBoard,
	onDivider,
	outermost,
	type Place,
	placeOn,
	roomBefore,
	roomBehind,
	rowOf,
	through,
} from './place';
export type { Seam } from './seam';
export { withTurnedEnd } from './turn-over';
