export { boxDrawings, leanText, responseDrawings } from './box';
export { blankDrawings, byRectangles, rollDrawing } from './cloth';
export { type Drawing, type Face, type Fonts, forPaper, type Page } from './drawing';
export { ownerName } from './lists';
export { isPdf, type OutputKind, pdfFiles, plainFiles } from './output-files';
export { printPack } from './pack';
export { panelDrawings } from './panel';
export { drawingSvg } from './pens';
export { sheetDrawing } from './sheet';
export { templateLength } from './templates';
export {
	ADJUSTED,
	amountText,
	buyText,
	cautionsOfSheet,
	cutGives,
	cutSetting,
	type CutSetting,
	type Figures,
	figuresOn,
	gravityText,
	HELD_BY,
	TIE_DOWN_HEADS,
	tieDownRows,
	leansAlike,
	packetText,
	pairTexts,
	partFacesText,
	partTitle,
	refusedText,
	responseColumns,
	type SheetAt,
	sheetNote,
	sheetTitle,
	sizesNote,
	unplacedTitle,
	volumeLines,
} from './wording';
