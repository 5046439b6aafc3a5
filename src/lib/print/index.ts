export { boardDrawings, boxDrawings, leanText, movedApart, responseDrawings } from './box';
export { blankDrawings, rollDrawing } from './cloth';
export { type Drawing, type Face, type Fonts, forPaper, type Page, qrPath } from './drawing';
export { movedBetween, orderGroups } from './lists';
export {
	isPdf,
	machineZip,
	type OutputKind,
	pdfFiles,
	type PdfKind,
	plainFiles,
} from './output-files';
export { printPack } from './pack';
export { panelDrawings, panelViews, pieceDrawings } from './panel';
export { drawingSvg } from './pens';
export { cutFromText, endsText, inCuttingOrder, LENGTHS_ONLY } from './runs';
export { sheetDrawing, sheetView } from './sheet';
export { shownPages, type ShownPages } from './shown-pages';
export { templateLength } from './templates';
export {
	APART_MEANS,
	HOW_SHARED,
	JOB_HEADS,
	jobRows,
	ownerName,
	SAVING_HEADS,
	savingRows,
	savingText,
	SHARE_HEADS,
	shareRows,
	WAY_HEADS,
	wayRows,
} from './together';
export {
	ADJUSTED,
	amountText,
	boxMassText,
	buyText,
	CARPET_HEADS,
	carpetWays,
	CUT_WAY_HEADS,
	cutWays,
	cautionsOfSheet,
	costLines,
	cutGives,
	cutNow,
	cutSetting,
	type CutSetting,
	earnedText,
	type Figures,
	figuresOn,
	gravityText,
	HELD_BY,
	leansAlike,
	moreText,
	packetText,
	pairTexts,
	partFacesText,
	partTitle,
	patternText,
	pieceAt,
	quoteNow,
	quoteShown,
	RADIATOR_HEADS,
	radiatorTexts,
	refusedText,
	responseColumns,
	type SheetAt,
	sheetNote,
	sheetTitle,
	sinceSent,
	sizesNote,
	spoilWayTexts,
	TIE_DOWN_HEADS,
	tieDownRows,
	unplacedTitle,
	volumeLines,
} from './wording';
