import { describe, expect, it } from 'vitest';
import { bounds } from '../../../src/lib/geometry/extent';
import { toMm } from '../../../src/lib/measure/length';
import { planned, type PanelFile } from './stock';

/* Opening 600 x 400, carpet pressed to 3 mm, a gap of 0.5 mm all round: board 593 x 393. */

const rect = (length: number, width: number) => ({ kind: 'rectangle', length, width }) as const;
const at = (x: number, y: number, length: number, width: number) => ({
	shape: rect(length, width),
	x,
	y,
});
const panel = (more: Partial<PanelFile> = {}) =>
	planned({ opening: rect(600, 400), cloth: 'carpet', ...more });
const told = (more: Partial<PanelFile>) =>
	panel(more).problems.map((p) => `${p.kind} ${p.path.slice(2).join('.')}: ${p.what}`);

describe('devices', () => {
	const device = (more: object = {}) => ({ id: 'd', length: 80, width: 50, x: 40, y: 30, ...more });

	it('stand where the words say: measured from the lower left of the board', () => {
		const { detail } = panel({ devices: [device({ holes: [{ x: 20, y: 20 }] })] });
		const [board, body] = [bounds(detail!.fit.board), bounds(detail!.devices[0]!.body)];
		expect([toMm(board.x), toMm(board.y)]).toEqual([3.5, 3.5]);
		expect([body.x - board.x, body.y - board.y].map((n) => toMm(n as never))).toEqual([40, 30]);
		expect(detail!.drills.map((d) => [toMm(d.x), toMm(d.y)])).toEqual([[60, 50]]);
	});

	it('may touch the edge of the board: 593 - 80', () => {
		expect(told({ devices: [device({ x: 513 })] })).toEqual([]);
		expect(told({ devices: [device({ x: 513.1 })] })).toEqual([
			'check devices.0: Device stands over the edge of the board.',
		]);
	});

	it('with the same mark are said, as are windows and layers; different lists may share one', () => {
		expect(told({ devices: [device(), device({ x: 300, name: 'Fuses' })] })).toEqual([
			'check devices.1.id: Fuses has the mark "d", which Device has already.',
		]);
		const window = (x: number) => ({ id: 'd', outline: at(x, 150, 60, 60) });
		expect(told({ windows: [window(200), window(400)] })).toEqual([
			'check windows.1.id: Window has the mark "d", which Window has already.',
		]);
		expect(told({ devices: [device()], windows: [window(300)] })).toEqual([]);
	});

	it('with the same mark are boards of their own, and none is taken for a copy of another', () => {
		const layer = (x: number, id = 'd') => ({
			...{ id, outline: at(x, 150, 60, 60), material: 'ply-6' },
		});
		const { parts } = panel({ layers: [layer(100), layer(300), layer(450, 'd-2')] });
		const marks = parts.map(({ id }) => id);
		expect(marks).toHaveLength(4);
		expect(new Set(marks).size).toBe(4);
	});
});

describe('the parts of things with the same mark', () => {
	const layer = (id: string, x: number, more: object = {}) => ({
		id,
		material: 'ply-6',
		outline: at(x, 150, 60, 60),
		...more,
	});
	const ids = (more: Partial<PanelFile>) => panel(more).parts.map((p) => p.id.split('.')[1]);

	it('have marks of their own, so that each of them is cut', () => {
		const layers = [layer('a', 100), layer('a', 200), layer('a-2', 300), layer('a', 400)];
		expect(ids({ layers })).toEqual(['board', 'a', 'a-3', 'a-2', 'a-4']);
		expect(told({ layers }).filter((t) => t.includes('mark'))).toEqual([
			'check layers.1.id: Layer has the mark "a", which Layer has already.',
			'check layers.3.id: Layer has the mark "a", which Layer has already.',
		]);
	});

	it('nor does a layer take the mark of the board; what lies on it still does', () => {
		const layers = [
			layer('board', 100, { outline: at(100, 100, 200, 200) }),
			layer('b', 150, { on: 'board' }),
		];
		expect(ids({ layers })).toEqual(['board', 'board-2', 'b']);
		expect(panel({ layers }).detail!.layers.map((l) => l.on)).toEqual([null, 'board-2']);
		expect(told({ layers }).filter((t) => t.includes('mark'))).toEqual([]);
	});

	it('are made of what each of them says itself', () => {
		const ring = (x: number, cloth: string | null) => ({
			id: 'r',
			outline: { shape: { kind: 'circle', diameter: 80 } as const, x, y: 200 },
			lap: 20,
			material: 'ply-6',
			cloth,
		});
		const { coverings } = panel({ rings: [ring(150, null), ring(400, 'carpet')] });
		expect(coverings.map((c) => c.id.split('.')[1])).toEqual(['face', 'ring-r-2']);
	});
});

describe('what is asked of edges', () => {
	it('is heeded once where an edge is given twice, and that is said', () => {
		const own = [
			{ edge: 1, clearance: 2 },
			{ edge: 1, clearance: 9 },
		];
		expect(told({ edges: { own } })).toEqual([
			'check edges.own.1.edge: Edge 1 is given twice; what is said here is not heeded.',
		]);
		expect(panel({ edges: { own } }).detail!.fit.edges[0]).toMatchObject({ gap: 3200 });
		expect(told({ edges: { own: [{ edge: 1 }, { edge: 2 }] } })).toEqual([]);
	});

	it('laps over itself on the back where the turn-under is wider than half the board', () => {
		const small = { opening: rect(121, 81), groove: 'none' } as const;
		expect(told({ ...small, margin: 100 })).toEqual([
			'check margin: The turn-under is 100 mm, and the board is only 74 mm across: the cloth would lie over itself on the back.',
		]);
		expect(told({ ...small, margin: 37 })).toEqual([]);
		expect(told({ ...small, margin: 100, cloth: null })).toEqual([]);
	});
});

describe('an opening', () => {
	const said = (length: number) =>
		told({ opening: rect(length, 400) }).filter((t) => /across/.test(t));

	it('larger than any panel of a vehicle is to be looked at, and past all bounds not planned', () => {
		expect(said(4500)).toEqual([]);
		expect(said(4501)).toEqual([
			'check opening: The outline measures 4501 mm across, more than any panel of a vehicle.',
		]);
		expect(said(15_001)).toEqual([
			'stop opening: The outline measures 15001 mm across, more than any panel of a vehicle: it is not planned.',
		]);
		expect(panel({ opening: rect(15_001, 400) }).detail).toBeUndefined();
	});
});

describe('a seam', () => {
	const seam = (x: number, y: number, u: number, v: number) => ({
		seams: [{ from: { x, y }, to: { x: u, y: v } }],
	});

	it('off the panel, or of one point, is left out and said; the cloth is kept', () => {
		expect(told(seam(0, 900, 600, 900))).toEqual([
			'check seams.0: The seam lies beside the panel, not across it; it is left out.',
		]);
		expect(told(seam(100, 100, 100, 100))).toEqual([
			'check seams.0: The seam starts and ends at one point; it is left out.',
		]);
		const { coverings } = panel(seam(0, 900, 600, 900));
		expect(coverings.map((c) => c.seams)).toEqual([[]]);
	});

	it('across the panel stands, though its points lie beside it', () => {
		expect(told(seam(300, -50, 300, 500))).toEqual([]);
		expect(panel(seam(300, -50, 300, 500)).coverings[0]!.seams).toHaveLength(1);
	});
});

describe('a rim of board', () => {
	it('too narrow beside a recess or a window is said', () => {
		const recess = (y: number, width: number) => ({
			layers: [
				{ id: 'l', place: 'recessed' as const, material: 'mdf-3', outline: at(100, y, 300, width) },
			],
		});
		expect(told(recess(5.5, 300))).toEqual([
			'check layers.0.outline: Layer leaves 2 mm of board beside the edge; it breaks out when it is cut.',
		]);
		expect(told(recess(9.5, 300))).toEqual([]);
		expect(told({ windows: [{ id: 'w', outline: at(100, 8, 200, 200) }] })).toEqual([
			'check windows.0.outline: Window leaves 1.5 mm of board beside the edge; it breaks out when it is cut.',
		]);
	});
});

describe('a groove that does not fit', () => {
	it('is left out, and the cloth is turned under without one', () => {
		const narrow = {
			opening: rect(300, 30),
			margin: 10,
			groove: { width: 4, depth: 5, offset: 12 },
		};
		const { detail, coverings, problems } = panel(narrow);
		expect(problems.map((p) => p.path.slice(2))).toEqual([['groove']]);
		expect(detail!.groove).toBeNull();
		expect(coverings[0]!.edges[0]).toMatchObject({ groove: null, margin: 16000 });
	});
});

describe('a corner given twice', () => {
	const shape = (...points: [number, number][]) => ({
		opening: { kind: 'polyline' as const, points: points.map(([x, y]) => ({ x, y })) },
	});

	it('in a row is taken once; come back to, it is called by its name', () => {
		expect(panel(shape([0, 0], [600, 0], [600, 0], [600, 400], [0, 400])).detail).toBeDefined();
		expect(told(shape([0, 0], [600, 0], [600, 400], [300, 400], [600, 400], [0, 400]))).toEqual([
			'stop opening: A corner of the outline is given twice, at 600 mm, 400 mm: edge 3 and edge 5 meet there.',
		]);
		expect(told(shape([0, 0], [600, 400], [600, 0], [0, 300]))[0]).toContain('crosses itself');
	});
});
