import type { BoxFigures } from '../../design';
import type { Plan } from '../../plan';
import { boxDrawings } from './drawings';
import { holdBlocks } from './hold';
import { responseBlocks } from './response';
import { boxTables, sizesAndAir } from './tables';
import { drawnPages, type Leaf, space, widthOf } from '../page';
import { boxMassText, type Figures, figuresOn } from '../wording';

/** Each box: its drawings, then every number of it. */
export function boxPages(plan: Plan): Leaf[] {
	const { ruler } = plan.job.shop;
	return plan.boxes.flatMap((box, i) => {
		const figures = figuresOn(ruler);
		const asked = plan.job.boxes.find((b) => b.id === box.id);
		return drawnPages(plan, {
			name: box.name,
			note: `box  ·  ${boxMassText(plan, box, ruler)}`,
			words: [asked?.note ?? ''],
			drawings: boxDrawings(plan, box, figures),
			...(box.figures === undefined ? {} : tablesOf(plan, box.name, box.figures, figures)),
			where: 'box',
			about: [`box:${box.id}`, ...box.parts.map((p) => `part:${p.id}`)],
			first: i === 0,
			figures,
		});
	});
}

/** The figures of the whole beside the three views, the rest under the drawings. */
function tablesOf(plan: Plan, name: string, box: BoxFigures, figures: Figures) {
	const { ruler } = plan.job.shop;
	const width = widthOf(plan);
	return {
		afterFirst: [space(3), ...sizesAndAir(box, width, figures, ruler)],
		below: [
			...boxTables(box, width, figures, ruler),
			...holdBlocks(box, width, figures, ruler),
			...responseBlocks(name, box, width, ruler),
		],
	};
}
