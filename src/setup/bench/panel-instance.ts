import { bounds, type Outline, moved } from '../../lib/geometry';
import { job as jobSchema, type Job, type JobFile } from '../../lib/job';
import { mm, ticks } from '../../lib/measure';
import { random, type RollPiece, type RollProblem } from '../../lib/nest';

type PanelFile = NonNullable<JobFile['panels']>[number];
type LayerFile = NonNullable<PanelFile['layers']>[number];

/**
 * A wavy outline of straight edges, as a drawing or a tracing gives it: `corners` of them about a
 * centre.
 */
function wavy(
	corners: number,
	x: number,
	y: number,
	across: number,
	high: number,
): { kind: 'polyline'; points: { x: number; y: number }[] } {
	const points = Array.from({ length: corners }, (_, i) => {
		const a = (2 * Math.PI * i) / corners;
		const r = 0.46 * (1 + 0.06 * Math.sin(7 * a));
		return { x: x + across * r * Math.cos(a), y: y + high * r * Math.sin(a) };
	});
	return { kind: 'polyline', points };
}

/**
 * Five layers, each with as many corners as the panel: two glued on, one on top of them, one set
 * in, one recessed.
 */
function layers(corners: number): LayerFile[] {
	const shape = (x: number, y: number, across: number, high: number) => ({
		shape: wavy(corners, x, y, across, high),
	});
	return [
		{ id: 'field', outline: shape(600, 300, 850, 380), material: 'thin' },
		{ id: 'top', on: 'field', outline: shape(420, 300, 300, 220), material: 'thin' },
		{
			id: 'inlay',
			on: 'field',
			outline: shape(800, 300, 240, 180),
			material: 'thin',
			covering: 'own',
			cloth: 'vinyl',
			sink: 6,
		},
		{ id: 'crest', on: 'top', outline: shape(420, 300, 140, 100), material: 'thin' },
		{
			id: 'tray',
			place: 'recessed',
			outline: shape(1060, 300, 90, 120),
			material: 'thin',
			lap: 10,
		},
	];
}

/**
 * A panel of 1200 by 600 mm, wrapped, grooved and clipped, whose opening and layers have `corners`
 * corners each.
 */
export function layeredPanel(corners: number): Job {
	const file: JobFile = {
		stock: {
			materials: [
				{ id: 'board', name: 'Plywood 12', nominal: 12, measured: 12 },
				{ id: 'thin', name: 'Plywood 6', nominal: 6, measured: 6 },
			],
			cloths: [
				{ id: 'carpet', name: 'Carpet', loose: 4.5, pressed: 3, nap: 'one-way' },
				{ id: 'vinyl', name: 'Vinyl', kind: 'vinyl', loose: 1.2, pressed: 1 },
			],
			rolls: [
				{ id: 'carpet-roll', cloth: 'carpet', width: 2000, usable: 1960, price: 10, step: 100 },
				{ id: 'vinyl-roll', cloth: 'vinyl', width: 1400, usable: 1380, price: 10, step: 100 },
			],
		},
		panels: [
			{
				id: 'panel',
				name: 'Layered panel',
				opening: wavy(corners, 600, 300, 1200, 600),
				material: 'board',
				cloth: 'carpet',
				layers: layers(corners),
				fixings: { kind: 'clips', spacing: 150, inset: 30, hole: 8 },
			},
		],
	};
	return jobSchema.parse(file);
}

/**
 * Thirty blanks with 48 corners each for a roll with a one-way nap: six kinds five times over, or
 * all different.
 */
export function thirtyBlanks(by: RollProblem['by'], alike: boolean): RollProblem {
	const dice = random(7);
	const pieces = Array.from({ length: alike ? 6 : 30 }, (_, i): RollPiece => {
		const size = { across: 250 + dice.int(700), high: 150 + dice.int(450) };
		const drawn = wavy(48, 0, 0, size.across, size.high).points;
		const outline: Outline = drawn.map((p) => ({ x: mm(p.x), y: mm(p.y) }));
		const box = bounds(outline);
		return {
			id: `blank-${i + 1}`,
			length: ticks(box.length),
			width: ticks(box.width),
			count: alike ? 5 : 1,
			turns: [0],
			outline: moved(outline, -box.x, -box.y),
		};
	});
	return { width: mm(1460), gap: ticks(0), pieces, limit: null, repeat: ticks(0), by };
}
