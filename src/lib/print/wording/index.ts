export { amountOf, amountText, buyText, moreText, packOf } from './amounts';
export {
	ADJUSTED,
	boxMass,
	boxMassText,
	gravityText,
	HELD_BY,
	panelMass,
	panelMassText,
	RADIATOR_HEADS,
	radiatorTexts,
	responseColumns,
	stepText,
	TIE_DOWN_HEADS,
	tieDownRows,
	volumeLines,
} from './box';
export { CARPET_HEADS, carpetWays, CUT_WAY_HEADS, cutAsText, cutWays, patternText } from './cloth';
export { costLines, earnedText, percentText } from './cost-lines';
export { cutGives, cutSetting, type CutSetting } from './cut-setting';
export { cutKind, offcutName, partLabel, partWithId, rackLabels, type SheetAt } from './cut-text';
export { leansAlike, longText, partFacesText, sizesNote } from './face-text';
export { type Figures, figuresOn, roundedNote, rulerName } from './figures';
export { cornerLetter, firm, formText, placeText, radiiText } from './ordinates';
export { packetText } from './packet-text';
export { pairTexts } from './pair-text';
export { type QuoteFigures, quoteNow, quoteShown, sinceSent } from './quote-figures';
export { REFUSED_PAGE, refusedText } from './refused-text';
export { cautionsOfSheet, shownOnSheet } from './sheet-cautions';
export {
	alikeText,
	partTitle,
	sheetNote,
	sheetsNamed,
	sheetTitle,
	unplacedTitle,
} from './sheet-text';
export { cutNow, pieceAt, spoilWayTexts } from './spoil';
