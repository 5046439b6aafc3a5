export { amountText, buyText } from './amounts';
export {
	cutKind,
	givesText,
	offcutName,
	partLabel,
	partWithId,
	rackLabels,
	type SheetAt,
} from './cut-text';
export { type Figures, figuresOn, roundedNote, rulerName } from './figures';
export { packetText } from './packet-text';
export { pairTexts } from './pair-text';
export { ADJUSTED, volumeLines } from './volume-lines';
