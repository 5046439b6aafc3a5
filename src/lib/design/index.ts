export {
	add3,
	type BoxBoard,
	type BoxFigures,
	type BoxPlan,
	type Chamber,
	cross3,
	dot3,
	flat,
	hull,
	length3,
	personsFor,
	type Point3,
	type ResponseFigures,
	type ResponsePoint,
	scale3,
	sideOf,
	type Sizes3,
	sub3,
	unit3,
	type VolumeLine,
} from './box';
export type { BoxSkin, ClothEdge, ClothStep, Covering, SkinFace, Window } from './covering';
export { designAll } from './design-all';
export { photographedPaperOf, type Squared, squareUp } from './import';
export { LOOSE } from './loose';
export { type Need, UNIT } from './need';
export {
	boardHoles,
	type CoverFigure,
	type EdgeFigure,
	type LayerFigure,
	type PanelDetail,
	type PanelPlan,
	type PanelSection,
	panelSectionOf,
	planPanel,
	type RingFigure,
} from './panel';
export type { Bevel, FaceSize, FaceWork, Part } from './part';
