import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../src/lib/job/job';
import { plan } from '../../src/lib/plan';
import { printPack } from '../../src/lib/print/pack';
import { boxMassText, panelMassText } from '../../src/lib/print/wording';
import { stepsOf } from '../steps';
import { sequenceOf } from '../../src/lib/nest/saw/cutting/fence';
import { inflate } from '../../src/lib/nest/inflated';
import { mm } from '../../src/lib/measure/length';
import { BOXES } from './boxes';
import { LISTS } from './lists';
import { PANELS } from './panels';

/* Single cases that the net has found. */

const named = (jobs: readonly JobFile[], name: string): JobFile => {
	const found = jobs.find((job) => job.name === name);
	if (!found) throw new Error(`no job ${name}`);
	return structuredClone(found);
};
const told = async (file: JobFile, path: string): Promise<string[]> =>
	(await plan(file, { effort: 1 })).problems
		.filter((p) => p.path.join('.') === path)
		.map((p) => p.what);

describe('a sheet that is pinned', () => {
	it('prints with a part that the job has no more, and says so', async () => {
		const file = named(LISTS, 'Half cut');
		file.parts = [{ id: 'B', material: 'ply', length: 300, width: 200 }];
		const made = await plan(file, { effort: 1 });
		expect(printPack(made).length).toBeGreaterThan(0);
		expect(await told(file, 'pinned.0.placed.0.id')).toEqual([
			'A sheet that is cut holds part.A, which is no part of the job now.',
		]);
	});

	it('says nothing of the parts there are', async () => {
		expect(await told(named(LISTS, 'Half cut'), 'pinned.0.placed.0.id')).toEqual([]);
	});
});

describe('figures past all reason', () => {
	it('minutes of work that would be no amount are refused', async () => {
		const file: JobFile = { ...named(LISTS, 'Half cut') };
		file.shop = { labour: { minutes: { sheet: 1e308 } } };
		expect(await told(file, 'shop.labour.minutes.sheet')).toHaveLength(1);
	});

	it('a driver 100 m deep is told and ends no plan', async () => {
		const file = named(BOXES, 'With a slot');
		for (const box of file.boxes ?? [])
			for (const driver of box.drivers ?? []) driver.depth = 100_000;
		expect(await told(file, 'boxes.0.drivers.0.depth')).not.toEqual([]);
	});

	it('a fence that reaches no way costs no search through every slice of the leftover', () => {
		const kerf = mm(3.2);
		const region = (w: number, leaf: number) => ({
			axis: null,
			w: inflate(mm(w), kerf),
			h: inflate(mm(400), kerf),
			parts: [],
			leaf,
		});
		const whole = {
			axis: 'x' as const,
			w: inflate(mm(2000), kerf),
			h: inflate(mm(400), kerf),
			parts: [region(700, 0), region(2000 - 700 - 3.2, -1)],
			leaf: -1,
		};
		const limits = { fenceLimit: mm(1), narrowestRip: null, kerf };
		expect(stepsOf(() => expect(sequenceOf(whole, limits)).toBeNull())).toBeLessThan(100_000);
	});
});

describe('the same thing named twice', () => {
	it('an edge that differs', async () => {
		const file = named(PANELS, 'Trim panel');
		for (const panel of file.panels ?? []) panel.edges?.own?.push({ edge: 4, clearance: 2 });
		expect(await told(file, 'panels.0.edges.own.4.edge')).toEqual([
			'Edge 4 is given twice; what is said here is not heeded.',
		]);
	});

	it('a corner of a box, whichever board comes first', async () => {
		const file = named(BOXES, 'Sealed and filled');
		for (const box of file.boxes ?? [])
			box.corners?.push({ between: ['front', 'bottom'], joint: 'mitre' });
		expect(await told(file, 'boxes.0.corners.1.between')).toEqual([
			'The corner of front and bottom is named twice; the later one goes.',
		]);
	});
});

/** A panel of the net with something else in it. */
const panelWith = (name: string, change: (panel: PanelFile) => void): JobFile => {
	const file = named(PANELS, name);
	file.panels?.forEach(change);
	return file;
};
type PanelFile = NonNullable<JobFile['panels']>[number];

describe('what is told and does not keep the rest from the saw', () => {
	const titles = async (file: JobFile): Promise<string[]> =>
		printPack(await plan(file, { effort: 1 })).map((page) => page.title);

	it('two layers of one mark: both are on the sheets', async () => {
		const file = panelWith('Trim panel', ({ layers = [] }) => {
			for (const layer of layers) layer.id = 'raised';
		});
		const made = await plan(file, { effort: 1 });
		expect(await told(file, 'panels.0.layers.1.id')).toEqual([
			'Layer has the mark "raised", which Layer has already.',
		]);
		expect(made.boards.flatMap((b) => b.faults)).toEqual([]);
		expect((await titles(file)).join()).not.toContain('refused');
		const laid = made.boards.flatMap((b) => b.answer.layouts.flatMap((l) => l.placed));
		expect(laid.map((p) => p.id).sort()).toEqual(['board', 'raised', 'raised-2'].map(ofPanel));
	});

	it('a pack of next to nothing', async () => {
		const file = named(PANELS, 'Trim panel');
		const sealant = { id: 'mastic', name: 'Mastic', kind: 'sealant', pack: 5e-324 } as const;
		file.stock?.sundries?.push(sealant);
		const at = `stock.sundries.${(file.stock?.sundries?.length ?? 0) - 1}.pack`;
		expect(await told(file, at)).toEqual(['One pack holds next to nothing.']);
		expect((await titles(file)).join()).toContain('To fetch and to buy');
	});

	it('a window longer than its board', async () => {
		const sample = new URL('../../shared/jobs/panel-stepped-cover.json', import.meta.url);
		const file = JSON.parse(readFileSync(sample, 'utf8')) as JobFile;
		const floor = file.panels?.find((p) => p.id === 'floor');
		const shape = floor?.windows?.[0]?.outline.shape;
		if (shape?.kind !== 'oval') throw new Error('the floor of the sample has no oval window');
		expect(await told(file, 'panels.1.windows.0.outline')).toEqual([]);
		const pages = await titles(file);
		shape.length = 1000;
		expect(await told(file, 'panels.1.windows.0.outline')).toEqual([
			'Grip hole runs over the edge of the board.',
		]);
		const after = await titles(file);
		expect(after.length).toBeGreaterThan(pages.length / 2);
		expect(after.join()).toContain('Folding floor');
	});
});

const ofPanel = (mark: string): string => `panel.${mark}`;

describe('what was filled in and had no say', () => {
	it('words for the bench stand on the page of the box and of the panel', async () => {
		const long = 'Sand every edge before the glue goes on. '.repeat(8).trim();
		const box = named(BOXES, 'Sealed and filled');
		for (const b of box.boxes ?? []) b.note = long;
		const panel = panelWith('Trim panel', (p) => (p.layers ?? []).forEach((l) => (l.note = long)));
		for (const file of [box, panel]) {
			const texts = printPack(await plan(file, { effort: 1 }))
				.filter(({ title }) => /Box|panel/i.test(title))
				.flatMap(({ marks }) => marks.flatMap((m) => (m.kind === 'text' ? [m.text] : [])));
			// Wrapped, so that no line of it is the whole.
			expect(texts.join(' ')).toContain('Sand every edge before the glue goes on. Sand');
			expect(texts).not.toContain(long);
		}
		const [piece] = (await plan(panel, { effort: 1 })).parts.filter((p) => p.id === 'panel.raised');
		expect(piece?.notes).toContain(long);
	});

	it('the cloth on a box and on a panel is in what they weigh', async () => {
		const weighs = async (file: JobFile, kg: number): Promise<string> => {
			for (const cloth of file.stock?.cloths ?? []) cloth.massPerArea = kg;
			const heads = printPack(await plan(file, { effort: 1 })).flatMap(({ marks }) =>
				marks.flatMap((m) =>
					m.kind === 'text' && /^(box|panel) {2}·/.test(m.text) ? [m.text] : [],
				),
			);
			return heads[0] ?? 'no heading';
		};
		const box = named(BOXES, 'Carpeted, and where it goes');
		const kilos = (text: string): number => Number(/([\d.]+) kg/.exec(text)?.[1]);
		const bare = kilos(await weighs(box, 0));
		// Girth of the sides 2 x (360 + 380) by 700, twice an end of 360 x 380, and turned rims.
		const cloth = kilos(await weighs(box, 10)) - bare;
		expect(cloth).toBeGreaterThan(10 * (1.48 * 0.7 + 2 * 0.36 * 0.38));
		expect(cloth).toBeLessThan(10 * (1.58 * 0.86 + 2 * 0.46 * 0.48));
		expect(await weighs(box, 10)).toContain('with drivers and cloth');
		expect(await weighs(named(PANELS, 'Patterned'), 1)).toMatch(
			/^panel {2}· {2}[\d.]+ kg with cloth$/,
		);
		const bareBoard = named(PANELS, 'Turned window');
		for (const panel of bareBoard.panels ?? []) delete panel.cloth;
		expect(await weighs(bareBoard, 1)).toMatch(/kg of board$/);
	});

	it('each of several weighs what one does', async () => {
		const weighs = async (file: JobFile): Promise<string[]> => {
			const made = await plan(file, { effort: 1 });
			const { ruler } = made.job.shop;
			return [
				...made.boxes.map((b) => boxMassText(made, b, ruler)),
				...made.panels.map((p) => panelMassText(made, p, ruler)),
			];
		};
		const box = named(BOXES, 'Carpeted, and where it goes');
		const one = await weighs(box);
		for (const b of box.boxes ?? []) b.count = 2;
		expect(await weighs(box)).toEqual(one);
		const pair = (given: 'left' | 'both', count: number): JobFile =>
			panelWith('Trim panel', (p) => Object.assign(p, { pair: given, count }));
		expect(await weighs(pair('both', 3))).toEqual(await weighs(pair('left', 1)));
	});

	it('a cloth of a layer that is covered with another, or with none', async () => {
		const asks = (covering: 'with' | 'bare' | 'own', cloth: string | null): JobFile =>
			panelWith('Trim panel', (p) => {
				const [layer] = p.layers ?? [];
				if (layer) Object.assign(layer, { covering, cloth, sink: 0 });
			});
		const at = 'panels.0.layers.0.cloth';
		expect(await told(asks('with', 'vinyl'), at)).toHaveLength(1);
		expect(await told(asks('bare', 'felt'), at)).toHaveLength(1);
		expect(await told(asks('with', 'felt'), at)).toEqual([]);
		expect(await told(asks('own', 'vinyl'), at)).toEqual([]);
		expect(await told(asks('bare', null), at)).toEqual([]);
	});

	it('the seat of a recess, and of a layer that is not set in', async () => {
		const at = 'panels.0.layers.0.sink';
		const asks = (place: 'raised' | 'recessed', covering: 'with' | 'own', sink: number): JobFile =>
			panelWith('Trim panel', (p) => {
				const [layer] = p.layers ?? [];
				if (layer) Object.assign(layer, { place, covering, sink });
			});
		expect(await told(asks('recessed', 'own', 5), at)).toHaveLength(1);
		expect(await told(asks('raised', 'with', 5), at)).toHaveLength(1);
		expect(await told(asks('raised', 'own', 5), at)).toEqual([]);
		expect(await told(asks('recessed', 'own', 0), at)).toEqual([]);
	});

	it('the size of the magnets is drawn, and checked against the rim they sit on', async () => {
		const asks = (diameter: number): JobFile =>
			panelWith('Floor with devices', (p) => {
				for (const { lift } of p.covers ?? []) if (lift?.by === 'magnets') lift.diameter = diameter;
			});
		const words = JSON.stringify(printPack(await plan(asks(12.5), { effort: 1 })));
		expect(words.match(/magnets:\s\d+\s×\sØ\s12\.5/)).not.toBeNull();
		expect(await told(asks(11), 'panels.0.covers.1.lift.diameter')).toEqual([]);
		expect(await told(asks(11.1), 'panels.0.covers.1.lift.diameter')).toHaveLength(1);
	});

	it('a cloth on a neighbour that is measured to as it stands', async () => {
		const asks = (beside: 'fixed' | 'panel', cloth: string | null): JobFile =>
			panelWith('Patterned', (p) => {
				p.edges = {
					all: { neighbourCloth: cloth },
					own: [{ edge: 2, beside, neighbourCloth: cloth }],
				};
			});
		const all = 'panels.0.edges.all.neighbourCloth';
		const own = 'panels.0.edges.own.0.neighbourCloth';
		expect(await told(asks('fixed', 'check'), all)).toHaveLength(1);
		expect(await told(asks('fixed', 'check'), own)).toHaveLength(1);
		expect(await told(asks('panel', 'check'), own)).toEqual([]);
		expect(await told(asks('fixed', null), all)).toEqual([]);
	});

	it('a face that is to show and gets no cloth', async () => {
		const asks = (cover: NonNullable<NonNullable<BoxFile['carpet']>['cover']>): JobFile => {
			const file = named(BOXES, 'Carpeted, and where it goes');
			for (const b of file.boxes ?? []) if (b.carpet) b.carpet.cover = cover;
			return file;
		};
		const at = 'boxes.0.carpet.show.0';
		expect(await told(asks(['front', 'left']), at)).toHaveLength(1);
		expect(await told(asks(['top']), at)).toEqual([]);
		expect(await told(asks([]), at)).toEqual([]);
	});
});
type BoxFile = NonNullable<JobFile['boxes']>[number];
