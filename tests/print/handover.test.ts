import { describe, expect, it } from 'vitest';
import sample from '../../shared/jobs/camper-bench.json';
import type { JobFile } from '../../src/lib/job/job';
import { plan, type Plan } from '../../src/lib/plan';
import { boxComesOff, panelComesOff } from '../../src/lib/print/handover/comes-off';
import { letteredPanel } from '../../src/lib/print/handover/picture';
import type { TextMark } from '../../src/lib/print/drawing/drawing';
import type { Bounds } from '../../src/lib/print/drawing/bounds';
import { overlap, textBox } from '../../src/lib/print/drawing/text-box';
import { pictureView } from '../../src/lib/print/panel/picture';
import { bounds, type Outline } from '../../src/lib/geometry';
import { toMm } from '../../src/lib/measure';
import { handoverPack, shopCardPack } from '../../src/lib/print/pack';
import { panelMass } from '../../src/lib/print/wording/box/hold-text';
import { wordsOn } from './words-on';

const FILE = sample as unknown as JobFile;
const RULER = { unit: 'mm', fraction: 32, decimal: '.' } as const;
const made = (more: Partial<JobFile> = {}): Promise<Plan> =>
	plan({ ...FILE, ...more }, { effort: 5 });

describe('what comes off', () => {
	it('is told with how, what holds it and how many, as the drawings have it', async () => {
		const planned = await made();
		const side = planned.panels.find((p) => p.id === 'side-panel')!;
		const rows = panelComesOff(planned, side, RULER);
		const { fixings, covers } = side.detail!;
		expect(rows.map((r) => [r.letter, r.what, r.how, r.held])).toEqual([
			[
				...['', 'Side panel with service cover', 'pull it off by its edge, a clip at a time'],
				`${fixings!.at.length} clips`,
			],
			['A', 'Service cover', 'pull it off, no tool', `${covers[0]!.magnets.length} magnets`],
		]);
		const board = planned.panels.find((p) => p.id === 'amp-board')!;
		expect(panelComesOff(planned, board, RULER)[0]).toMatchObject({
			how: 'undo the screws, then lift it out',
			held: `${board.detail!.fixings!.at.length} screws`,
			// Boards of 1.4 kg, amplifier 4.1, fuse holder 0.2: who lifts it lifts all.
			mass: '5.7 kg with its devices',
			persons: 1,
		});
	});

	it('names devices within the board, in their outline or clear of it', async () => {
		const board = (await made()).panels.find((p) => p.id === 'amp-board')!;
		const { view } = pictureView(board.detail!);
		const onPaper = (outline: Outline) => {
			const { x, y, length, width } = bounds(outline);
			const [left, low] = [view.x + toMm(x) * view.scale, view.y - toMm(y) * view.scale];
			const size = { width: toMm(length) * view.scale, height: toMm(width) * view.scale };
			return { x: left, y: low - size.height, ...size };
		};
		const inside = (a: Bounds, b: Bounds): boolean =>
			a.x >= b.x &&
			a.x + a.width <= b.x + b.width &&
			a.y >= b.y &&
			a.y + a.height <= b.y + b.height;
		const { marks } = letteredPanel(board, board.detail!);
		expect(board.detail!.devices.map((d) => d.name)).toEqual(['Amplifier', 'Fuse holder']);
		for (const { name, body } of board.detail!.devices) {
			const box = textBox(marks.find((m) => m.kind === 'text' && m.text === name) as TextMark);
			expect(inside(box, onPaper(board.detail!.fit.finished)), name).toBe(true);
			const own = onPaper(body);
			expect(inside(box, own) || !overlap(box, own), name).toBe(true);
		}
	});

	it('takes two from 23 kg on, boxes and panels alike', async () => {
		const planned = await made();
		const [box] = planned.boxes;
		const heavy = (loadedMass: number) => ({
			...box!,
			figures: { ...box!.figures!, loadedMass },
		});
		const bare = { ...planned, blanks: [] };
		expect(boxComesOff(bare, heavy(22.99), RULER).persons).toBe(1);
		expect(boxComesOff(bare, heavy(23), RULER).persons).toBe(2);
		const panel = planned.panels[0]!;
		const lead = { ...panel, parts: [{ ...panel.parts[0]!, count: 1, mass: 23 }] };
		expect(panelMass(bare, lead)).toBe(23);
		expect(panelComesOff(bare, lead, RULER)[0]?.persons).toBe(2);
	});
});

describe('the card that stays with the vehicle', () => {
	it.each(['a4', 'letter'] as const)(
		'says all of it on %s, and what nobody entered',
		async (paper) => {
			const words = handoverPack(await made({ shop: { ...FILE.shop, paper } }))
				.flatMap((page) => wordsOn(page.marks))
				.join(' ');
			for (const said of [
				'Spare wheel',
				'From below, as before; the box stays in.',
				'not entered: fill in by hand',
				'drain behind the left wheel arch',
				'N-311',
				'NC-ANT',
				'Ferry Lane Trimmings',
				'Waters et al.',
				'licensed person',
			])
				expect(words).toContain(said);
			expect(words).not.toMatch(/EUR|undefined|NaN/);
		},
	);

	it('of nothing built is no card', async () => {
		const nothing = await made({ boxes: [], panels: [], options: [] });
		expect(handoverPack(nothing)).toEqual([]);
		expect(shopCardPack(nothing)).toEqual([]);
	});
});

it('the card of the shop says sizes, settings and what to do next time', async () => {
	const planned = await made({
		handover: {
			built: [{ what: 'Gap at the left', size: '2.5 mm' }],
			...{ settings: 'Blade at 12 degrees', next: 'Measure the arch twice.' },
		},
	});
	const words = shopCardPack(planned)
		.flatMap((page) => wordsOn(page.marks))
		.join(' ');
	for (const said of [
		'17.6',
		'Gap at the left',
		'2.5 mm',
		'Blade at 12 degrees',
		'kerf 3',
		'twice.',
	])
		expect(words).toContain(said);
});
