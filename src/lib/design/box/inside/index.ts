export {
	braceAll,
	type Braced,
	braceName,
	type Dowel,
	type Plate,
	type PlateBody,
	type Rod,
	rodMass,
} from './braces';
export { clashes } from './clash';
export { cleatAll, type Cleated, stripSeam } from './cleat';
export { type LayerAsk, type Layers, layUp } from './doubler';
export { roomFor } from './driver';
export { bareAir, fillSwept, framedOf, type Inside, mount, stageOf } from './inside';
export { dividerName, edgeSeams, type Meeting } from './rooms';
