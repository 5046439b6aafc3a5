import { materialName } from '../../job';
import type { FaceWork, Part } from '../../design';
import { type Outline, rectangle } from '../../geometry';
import { printAngle } from '../../measure';
import type { Plan } from '../../plan';
import { type Figures, longText } from '../wording';
import type { LayerName } from './layers';
import type { MachineDrawing, MachineLine } from './machine-drawing';

/** One part as its face is looked at, its lower left corner at the origin. */
export function partForMachine(plan: Plan, part: Part, figures: Figures): MachineDrawing {
	const { length, width } = part;
	return {
		name: `part-${part.label}`,
		title: `${part.label} ${part.name}`,
		length,
		width,
		lines: linesOfPart(part),
		notes: [
			`${part.label} ${part.name}, ${part.count} off`,
			`${materialName(plan.job, part.material)}, ${figures.length(part.thickness)} thick, ${figures.size(length, width)}`,
			`Seen: ${part.face} face${part.grain === 'length' ? '. The grain runs along x' : ''}`,
			...bevelsOf(plan, part),
			...workWords(part, figures),
		],
		texts: [],
	};
}

/** All that is cut of a part, in its own frame. */
export function linesOfPart(part: Part): MachineLine[] {
	const outline = part.outline ?? rectangle(0, 0, part.length, part.width);
	const closed = (layer: LayerName, line: Outline): MachineLine => ({ layer, line, closed: true });
	return [
		closed('CUT_OUTSIDE', outline),
		...part.holes.map((hole) => closed('CUT_INSIDE', hole)),
		...(part.faceWork ?? []).map((work) => ({
			layer: layerOf(work),
			line: work.line,
			closed: work.closed,
		})),
	];
}

const KINDS = { groove: 'GROOVE', pocket: 'POCKET', rabbet: 'RABBET', drill: 'DRILL' } as const;

function layerOf({ kind, from }: FaceWork): LayerName {
	return from === 'near' ? KINDS[kind] : `${KINDS[kind]}_FAR`;
}

/** What a router leaves square for the saw or the plane. */
function bevelsOf(plan: Plan, part: Part): string[] {
	if (part.bevels.length === 0) return [];
	const { decimal } = plan.job.shop.ruler;
	const each = part.bevels.map(
		(b) => `${b.edge}: ${b.side} edge, tilt ${printAngle(b.tilt, decimal)}, ${longText(part, b)}`,
	);
	return [`Bevels, not drawn: the line is the whole blank. ${each.join('; ')}`];
}

/** Each kind of work once, with its count and its figures. */
function workWords(part: Part, figures: Figures): string[] {
	const count = new Map<string, number>();
	for (const work of part.faceWork ?? []) {
		const text = [
			`${layerOf(work)}: ${work.name}`,
			work.width === undefined ? '' : `${figures.length(work.width)} wide`,
			work.depth === undefined ? '' : `${figures.length(work.depth)} deep`,
		]
			.filter((t) => t !== '')
			.join(', ');
		count.set(text, (count.get(text) ?? 0) + 1);
	}
	return [...count].map(([text, n]) => (n === 1 ? text : `${text}, ${n} of them`));
}
