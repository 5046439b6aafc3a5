import type { BoxFigures } from '../../../design';
import type { Ruler } from '../../../measure';
import { smallAreaText } from '../amounts';
import type { Figures } from '../figures';

/** One step of putting a box together, and in brackets what it closes and takes. */
export function stepText(
	step: BoxFigures['assembly'][number],
	figures: Figures,
	ruler: Ruler,
): string {
	const { seams, glued, screws, apart } = step;
	const takes = [
		...(seams.length > 0 ? [`seam${seams.length > 1 ? 's' : ''} ${seams.join(', ')}`] : []),
		...(glued > 0 ? [`glue ${smallAreaText(glued, ruler)}`] : []),
		...(screws > 0 ? [`${screws} screws${spaced(apart, figures, ruler)}`] : []),
	];
	return takes.length === 0 ? step.text : `${step.text.replace(/\.$/, '')} (${takes.join('; ')}).`;
}

function spaced(apart: number, figures: Figures, { unit }: Ruler): string {
	return apart > 0 ? ` about ${figures.bench(apart)} ${unit} apart` : '';
}
