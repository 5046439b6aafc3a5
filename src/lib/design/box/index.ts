export { hull, SCREW_FROM_END, sideOf } from './board';
export type {
	BoxBoard,
	BoxFigures,
	BoxPlan,
	Chamber,
	ResponseFigures,
	ResponsePoint,
	Sizes3,
	VolumeLine,
} from './box-plan';
export { framedName } from './mounted';
export { pointOnBoard } from './on-board';
export { planBox } from './plan-box';
export { personsFor } from './report';
export { add3, cross3, dot3, flat, length3, type Point3, scale3, sub3, unit3 } from './solid';
