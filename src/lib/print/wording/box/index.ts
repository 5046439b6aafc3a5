export {
	boxMassText,
	gravityText,
	HELD_BY,
	panelMassText,
	TIE_DOWN_HEADS,
	tieDownRows,
} from './hold-text';
export { RADIATOR_HEADS, radiatorTexts, responseColumns } from './response-columns';
export { ADJUSTED, volumeLines } from './volume-lines';
export { stepText } from './step-text';
