export {
	boxMass,
	boxMassText,
	gravityText,
	HELD_BY,
	panelMass,
	panelMassText,
	TIE_DOWN_HEADS,
	tieDownRows,
} from './hold-text';
export { RADIATOR_HEADS, radiatorTexts, responseColumns } from './response-columns';
export { stepText } from './step-text';
export { ADJUSTED, volumeLines } from './volume-lines';
