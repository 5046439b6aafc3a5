import { designAll } from '../../design';
import { bounds, type Rect } from '../../geometry';
import { type JobFile, type Path, placesIn, readJob, valueAt } from '../../job';
import { toMm } from '../../measure';
import { listAt } from '../state';
import { inPanel, type Made, type PanelRoom } from './panel-starts';

/*
 * What a new thing starts with in its parent: a layer within its panel, a driver within its board.
 * The first is what one would expect; the others are tried where that one does not go in.
 */

/** Ways to start a new thing of the list at `path`, the likeliest first. */
export function startsAt(file: JobFile, path: Path, made: unknown): [unknown, ...unknown[]] {
	const [thing, index, list] = path;
	if (typeof made !== 'object' || made === null || path.length !== 3) return [made];
	const start = made as Made;
	if (thing === 'panels' && typeof index === 'number') {
		return inPanel(String(list), start, panelRoom(file, index));
	}
	if (thing === 'boxes' && typeof index === 'number') {
		const vented = listAt(file, ['boxes', index, 'vents']).length > 0;
		return inBox(String(list), start, { size: sizesOf(file, index), vented });
	}
	return [made];
}

/** A drawing that cannot be read yet still lets one add to its panel. */
const UNREAD: PanelRoom = { x: 0, y: 0, length: 300, width: 200, taken: [] };

/** The rectangle round the board of a panel, and what lies on it. */
function panelRoom(file: JobFile, index: number): PanelRoom {
	const read = readJob({
		...file,
		boxes: [],
		parts: [],
		panels: [valueAt(file, ['panels', index])],
	});
	const { detail } = designAll(read.job, placesIn(file), read.unsized).panels[0] ?? {};
	if (!detail) return UNREAD;
	const { opening } = detail.fit.sizes;
	const lying = [
		...detail.layers.map((l) => l.hole ?? l.piece),
		...detail.covers.map((c) => c.hole),
		...detail.windows.map((w) => w.hole),
		...detail.devices.map((d) => d.space),
	];
	const taken = lying.flatMap((outline) => (outline ? [inMm(bounds(outline))] : []));
	return { ...inMm(opening), taken };
}

const inMm = ({ x, y, length, width }: Rect): Rect => ({
	x: toMm(x),
	y: toMm(y),
	length: toMm(length),
	width: toMm(width),
});

const round = (n: number): number => Math.max(1, Math.round(n));

interface BoxRoom {
	readonly size: Sizes;
	readonly vented: boolean;
}

interface Sizes {
	readonly width: number;
	readonly height: number;
	readonly depth: number;
}

/** Outside sizes of a box, near enough to start with. */
function sizesOf(file: JobFile, index: number): Sizes {
	const shape = readJob({ ...file, boxes: [valueAt(file, ['boxes', index])] }).job.boxes[0]?.shape;
	const mm = (n: number | undefined): number => (n ?? 480_000) / 1600;
	if (!shape) return { width: 300, height: 300, depth: 300 };
	if (shape.kind === 'tapered')
		return { width: mm(shape.back.width), height: mm(shape.back.height), depth: mm(shape.depth) };
	if (shape.kind === 'free') return { width: mm(shape.width), height: 300, depth: 300 };
	const depth =
		shape.kind !== 'slanted'
			? shape.depth
			: shape.lean.by === 'depths'
				? Math.min(shape.lean.bottom, shape.lean.top)
				: shape.lean.depth;
	return { width: mm(shape.width), height: mm(shape.height), depth: mm(depth) };
}

/** Cut-out, frame and mounting depth of a driver, by what there may be room for. */
const DRIVERS = [
	[230, 260, 120],
	[186, 212, 95],
	[145, 168, 70],
	[95, 116, 50],
	[60, 76, 30],
] as const;

function inBox(list: string, made: Made, { size, vented }: BoxRoom): [unknown, ...unknown[]] {
	const places = [null, size.width * 0.2, size.width * 0.8, size.width * 0.35, size.width * 0.65];
	const boards = ['front', 'top', 'left', 'right', 'back', 'side-1', 'side-2'];
	// Beside a vent no radiator is worked out, wherever it stands.
	const drivers = list === 'drivers' || (list === 'radiators' && !vented);
	if (drivers) {
		const one = (board: string, size: (typeof DRIVERS)[number], across: number | null) => ({
			...made,
			...(board === 'front' ? {} : { board }),
			cutout: { kind: 'round', diameter: size[0] },
			...{ frame: size[1], depth: size[2] },
			...(across === null ? {} : { at: { across: round(across) } }),
		});
		const front = DRIVERS.flatMap((d) => places.slice(0, 3).map((at) => one('front', d, at)));
		const other = boards.slice(1).map((board) => one(board, DRIVERS[3], null));
		return [one('front', DRIVERS[0], null), ...front.slice(1), ...other];
	}
	const shares = [0.5, 0.3, 0.7, 0.2, 0.8];
	if (list === 'dividers' || list === 'braces') {
		const all = shares.flatMap((share) =>
			(['width', 'height', 'depth'] as const).map((across) => ({
				...made,
				across,
				at: round((size[across] - 36) * share),
			})),
		);
		return [all[0], ...all.slice(1), made];
	}
	if (list === 'devices') {
		const all = [0.4, 0.15].flatMap((share) =>
			['back', 'left', 'right', 'top'].flatMap((board) =>
				[0.3, 0.1].map((at) => ({
					...made,
					board,
					...{ length: round(size.width * share), width: round(size.height * share) },
					...{ x: round(size.width * at), y: round(size.height * at) },
				})),
			),
		);
		return [all[0], ...all.slice(1)];
	}
	if (list === 'vents') {
		const all = [70, 40].flatMap((diameter) =>
			['front', 'side-1', 'back', 'left'].flatMap((board) =>
				places.slice(0, 3).map((across) => ({
					kind: 'round',
					board,
					at: across === null ? {} : { across: round(across) },
					diameter,
					goal: { by: 'length', length: round(size.depth * 0.4) },
				})),
			),
		);
		return [all[0], ...all.slice(1)];
	}
	return [made];
}
