export type { Bounds } from './bounds';
export { clipped, runsInto } from './clip';
export type {
	Drawing,
	Ink,
	LineKind,
	Mark,
	Page,
	PathMark,
	PathStep,
	PhotoMark,
	TextMark,
} from './drawing';
export { escaped } from './escaped';
export { type Face, faceRuns, FAMILY, type Fonts, settable, type Weight } from './faces';
export { hatch, type Hatch } from './hatch';
export {
	circlePath,
	line,
	onPaper,
	outlineSteps,
	polygon,
	polyline,
	rect,
	ringPath,
	type Spot,
	type View,
} from './path';
export { placed } from './place';
export { qrCode, type QrCode, qrMark, qrPath } from './qr';
export { faultText, orStandIn, sound, UNDRAWN } from './stand-in';
export { boxInRing, boxOffRing, inRing, overlap, round, startOf, textBox } from './text-box';
export { CAP, DESCENT, shortened, textWidth, wrapped } from './text-width';
export { forPaper } from './unprintable';
