export { type Complaint, drawn, type Drawn, refused, type Undrawn } from './drawn';
export {
	circleShape,
	cornersShape,
	cutCorners,
	ovalShape,
	polylineShape,
	rectangleShape,
	trapezoidShape,
} from './shape-numbers';
export { listed, sayHair, sayPlace, sayRough } from './words';
