export { amountText, buyText } from './amounts';
export { cutGives, cutSetting, type CutSetting } from './cut-setting';
export { cutKind, offcutName, partLabel, partWithId, rackLabels, type SheetAt } from './cut-text';
export { type Figures, figuresOn, roundedNote, rulerName } from './figures';
export { packetText } from './packet-text';
export { pairTexts } from './pair-text';
export { REFUSED_PAGE, refusedText } from './refused-text';
export { cautionsOfSheet, shownOnSheet } from './sheet-cautions';
export {
	materialName,
	partTitle,
	sheetName,
	sheetNote,
	sheetTitle,
	unplacedTitle,
} from './sheet-text';
export { ADJUSTED, volumeLines } from './volume-lines';
