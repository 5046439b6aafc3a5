import type { Plan } from '../../plan';
import { boxDrawings } from './drawings';
import { holdBlocks } from './hold';
import { responseBlocks } from './response';
import { boxTables } from './tables';
import { drawnPages, type Leaf, widthOf } from '../page';
import { boxMassText, figuresOn } from '../wording';

/** Each box: its drawings, then every number of it. */
export function boxPages(plan: Plan): Leaf[] {
	const { ruler } = plan.job.shop;
	const width = widthOf(plan);
	return plan.boxes.flatMap((box, i) => {
		const figures = figuresOn(ruler);
		const asked = plan.job.boxes.find((b) => b.id === box.id);
		return drawnPages(plan, {
			name: box.name,
			note: `box  ·  ${boxMassText(plan, box, ruler)}`,
			words: [asked?.note ?? ''],
			drawings: boxDrawings(plan, box, figures),
			below:
				box.figures === undefined
					? []
					: [
							...boxTables(box.figures, width, figures, ruler),
							...holdBlocks(box.figures, width, figures, ruler),
							...responseBlocks(box.name, box.figures, width, ruler),
						],
			where: 'box',
			about: [`box:${box.id}`, ...box.parts.map((p) => `part:${p.id}`)],
			first: i === 0,
			figures,
		});
	});
}
