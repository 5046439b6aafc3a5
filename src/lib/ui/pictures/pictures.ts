import type { Rect } from '../../geometry';
import type { Plan } from '../../plan';
import { boxStage, panelStage, pathData, type StageView } from '../stage';

/** A line of a small drawing. */
export interface PictureLine {
	readonly d: string;
	readonly fill?: string;
	readonly line: string;
}

const ROOM = { width: 56, height: 40, edge: 2 };
const known = new WeakMap<Plan, Map<string, readonly PictureLine[]>>();

/** A small drawing of each box and panel of a plan, by its mark: 56 by 40. */
export function picturesOf(plan: Plan): ReadonlyMap<string, readonly PictureLine[]> {
	let made = known.get(plan);
	if (!made) known.set(plan, (made = drawAll(plan)));
	return made;
}

function drawAll(plan: Plan): Map<string, readonly PictureLine[]> {
	const made = new Map<string, readonly PictureLine[]>();
	for (const { id, figures } of plan.boxes) {
		const box = plan.job.boxes.find((b) => b.id === id);
		const [front] = box && figures ? boxStage({ box, figures, at: [] }) : [];
		if (front) made.set(id, small(front));
	}
	for (const { id, detail } of plan.panels) {
		const panel = plan.job.panels.find((p) => p.id === id);
		const [front] = panel && detail ? panelStage({ panel, detail, at: [] }) : [];
		if (front) made.set(id, small(front));
	}
	return made;
}

/**
 * A small drawing of a whole job: its first box or panel, else the first of its sheets with what
 * lies on it; empty for a job with nothing in it.
 */
export function pictureOfJob(plan: Plan): readonly PictureLine[] {
	const [first] = picturesOf(plan).values();
	return first ?? sheetPicture(plan);
}

function sheetPicture({ boards }: Plan): readonly PictureLine[] {
	const layout = boards.flatMap((b) => b.answer.layouts)[0];
	if (!layout) return [];
	const { width, height, edge } = ROOM;
	const scale = Math.min((width - 2 * edge) / layout.length, (height - 2 * edge) / layout.width);
	const left = (width - layout.length * scale) / 2;
	const base = (height + layout.width * scale) / 2;
	const to = (x: number, y: number): string =>
		`${tenths(left + x * scale)} ${tenths(base - y * scale)}`;
	const drawn = (r: Rect): string =>
		`M${to(r.x, r.y)}L${to(r.x + r.length, r.y)}L${to(r.x + r.length, r.y + r.width)}L${to(r.x, r.y + r.width)}Z`;
	return [
		{ d: drawn({ x: 0, y: 0, length: layout.length, width: layout.width }), line: 'wide' },
		...layout.placed.map((p) => ({ d: drawn(p), line: 'narrow', fill: 'sheet' })),
	];
}

const tenths = (n: number): number => Math.round(n * 10) / 10;

/** What is there already and what is hidden is left out at this size. */
function small({ around, shapes }: StageView): PictureLine[] {
	const { width, height, edge } = ROOM;
	const scale = Math.min((width - 2 * edge) / around.length, (height - 2 * edge) / around.width);
	const left = (width - around.length * scale) / 2 - around.x * scale;
	const base = (height + around.width * scale) / 2 + around.y * scale;
	return shapes
		.filter(({ line }) => line === 'wide' || line === 'narrow')
		.map(({ outlines, fill, line }) => ({
			d: pathData(outlines, (p) => ({ x: left + p.x * scale, y: base - p.y * scale })),
			line,
			...(fill ? { fill } : {}),
		}));
}
