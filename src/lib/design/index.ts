export {
	type CutLine,
	type Designed,
	type EdgeName,
	type FormCorner,
	formOf,
	type LetteredEdge,
	needsWork,
	type Operation,
	type OutlineForm,
	type PartFace,
	type WorkFace,
	workOn,
	type WorkPiece,
} from './after-saw';
export {
	add3,
	type BoxBoard,
	type BoxFigures,
	type BoxPlan,
	type Chamber,
	cross3,
	dot3,
	framedName,
	hull,
	length3,
	personsFor,
	pointOnBoard,
	type Point3,
	type ResponseFigures,
	type ResponsePoint,
	scale3,
	SCREW_FROM_END,
	type Sizes3,
	sub3,
	unit3,
	type VolumeLine,
} from './box';
export type { BoxSkin, ClothEdge, ClothStep, Covering, SkinFace, Window } from './covering';
export { designAll } from './design-all';
export {
	findPaper,
	type FoundPaper,
	photographedPaperOf,
	type PictureReading,
	readPicture,
	type Squared,
} from './import';
export { LOOSE } from './loose';
export { type Need, UNIT } from './need';
export {
	type EdgeFigure,
	type PanelDetail,
	type PanelPlan,
	type PanelSection,
	panelSectionOf,
	planPanel,
} from './panel';
export type { Bevel, FaceSize, FaceWork, Part } from './part';
