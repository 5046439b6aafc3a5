import { type BoxFigures, SCREW_FROM_END, type Sizes3 } from '../../design';
import { printAngle, showMass, type Ruler, showVolume, ticks } from '../../measure';
import { type Figures, RADIATOR_HEADS, radiatorTexts, stepText } from '../wording';
import {
	space,
	type Block,
	HALF_PAGE,
	halves,
	paragraph,
	table,
	type Row,
	subheading,
	sentence,
} from '../page';
import { placesTable } from './places-table';
import { volumeTable, volumeWords } from './volume-table';

/** The numbers of what is in a box, and how it goes together: drivers, vents, seams, assembly. */
export function boxTables(box: BoxFigures, width: number, figures: Figures, ruler: Ruler): Block[] {
	return [
		...driversTable(box, width, figures),
		...radiatorsTable(box, width, figures, ruler),
		...ventsTable(box, width, figures, ruler),
		...placesTable(box, width, figures),
		...rodsTable(box, width, figures, ruler),
		...seamsTable(box, width, figures),
		...assemblyTable(box, width, figures, ruler),
	];
}

/** The sizes beside the air of the first chamber, line by line; each further one under them. */
export function sizesAndAir(
	box: BoxFigures,
	width: number,
	figures: Figures,
	ruler: Ruler,
): Block[] {
	const of = box.chambers.length;
	const [first, ...others] = box.chambers;
	const sizes = [...sizesTable(box, figures), ...sentence(sizesSay(box, ruler), HALF_PAGE)];
	return [
		halves(sizes, first ? volumeTable(first, of, HALF_PAGE, ruler) : [], width),
		...(first ? volumeWords(first, width, ruler) : [space(4)]),
		...others.flatMap((c) => [
			...volumeTable(c, of, HALF_PAGE, ruler),
			...volumeWords(c, width, ruler),
		]),
	];
}

function sizesSay({ leans, fit, solved }: BoxFigures, ruler: Ruler): string[] {
	return [
		...leans.map((l) => leanText(l, ruler)),
		solved === null
			? ''
			: `the ${solved.dimension} was worked out for ${showVolume(solved.wanted, ruler)} net`,
		fit.fits === null ? '' : fit.fits ? 'it fits its space' : 'it does not fit its space',
		fit.turn ?? '',
	];
}

function sizesTable({ outside, inside, fit }: BoxFigures, figures: Figures): Block[] {
	const row = (what: string, s: Sizes3): Row => ({
		cells: [what, figures.bench(s.width), figures.bench(s.height), figures.bench(s.depth)],
	});
	const rows = [
		row('Outside', outside),
		row('Inside', inside),
		...(fit.cloth > 0 ? [row('Outside with cloth', fit.wrapped)] : []),
	];
	const number = (head: string) => ({ head, width: 18, align: 'end' as const });
	const columns = [{ head: '', width: { share: 1 } }, ...['Width', 'Height', 'Depth'].map(number)];
	return [subheading('Sizes', HALF_PAGE), ...table({ columns, rows }, HALF_PAGE)];
}

/** How a board that is not square stands: from upright, from level, or from square to the width. */
export function leanText(
	{ board, angle, from }: BoxFigures['leans'][number],
	ruler: Ruler,
): string {
	const by = printAngle(angle, ruler.decimal);
	if (from === 'upright') return `${board} leans ${by} from upright`;
	return `${board} tilts ${by} from ${from === 'level' ? 'level' : 'square to the width'}`;
}

function driversTable(box: BoxFigures, width: number, figures: Figures): Block[] {
	if (box.drivers.length === 0) return [];
	return [
		subheading('Drivers', width),
		...table(
			{
				columns: [
					{ head: 'Driver', width: { share: 1 } },
					{ head: 'Board', width: 24 },
					{ head: 'To the edge', width: 20, align: 'end' },
					{ head: 'Depth', width: 20, align: 'end' },
					{ head: 'Room', width: 20, align: 'end' },
					{ head: 'Behind', width: 20, align: 'end' },
					{ head: 'Meets', width: 24 },
				],
				rows: box.drivers.map((d) => ({
					cells: [
						d.front === null ? d.name : `${d.name}, looks into chamber ${d.front}`,
						d.board,
						figures.bench(d.edge),
						figures.bench(d.depth),
						figures.bench(d.room),
						figures.bench(d.behind),
						d.meets.join(', ') || 'nothing',
					],
				})),
			},
			width,
		),
		space(4),
	];
}

function radiatorsTable(box: BoxFigures, width: number, figures: Figures, ruler: Ruler): Block[] {
	if (box.radiators.length === 0) return [];
	return [
		subheading('Passive radiators: weigh what is added, tune on the real box', width),
		...table(
			{
				columns: [
					{ head: 'Radiator', width: { share: 1 } },
					...['To the edge', 'Depth', 'Behind'].map((head) => ({
						head,
						width: 20,
						align: 'end' as const,
					})),
					...RADIATOR_HEADS.map((head) => ({ head, width: 20, align: 'end' as const })),
					{ head: 'Meets', width: 24 },
				],
				rows: box.radiators.map((r) => ({
					cells: [
						`${r.name}\n${r.board}`,
						figures.bench(r.edge),
						figures.bench(r.depth),
						figures.bench(r.behind),
						...radiatorTexts(r, ruler),
						r.meets.join(', ') || 'nothing',
					],
				})),
			},
			width,
		),
		space(4),
	];
}

function ventsTable(box: BoxFigures, width: number, figures: Figures, ruler: Ruler): Block[] {
	if (box.vents.length === 0) return [];
	const rows = box.vents.map((v) => {
		const speed = v.speed === null ? '' : `${v.speed.toFixed(0)} m/s`;
		return {
			cells: [
				[v.name, ...v.notes].join('\n'),
				`${v.count} × ${v.size.map((s) => figures.bench(s)).join(' × ')}`,
				{ text: figures.bench(v.length), weight: 'semibold' } as const,
				v.tuning === null ? 'none' : `${v.tuning.toFixed(1).replace('.', ruler.decimal)} Hz`,
				figures.bench(v.clear),
				[speed, v.speedWord ?? ''].filter((t) => t !== '').join(', '),
			],
		};
	});
	return [
		subheading('Vents: cut long and tune by trimming', width),
		...table(
			{
				columns: [
					{ head: 'Vent', width: { share: 1 } },
					{ head: 'Size', width: 34 },
					{ head: 'Length', width: 20, align: 'end' },
					{ head: 'Tuning', width: 18, align: 'end' },
					{ head: 'Clear', width: 18, align: 'end' },
					{ head: 'Air', width: 30 },
				],
				rows,
			},
			width,
		),
		space(4),
	];
}

function rodsTable(box: BoxFigures, width: number, figures: Figures, ruler: Ruler): Block[] {
	if (box.rods.length === 0) return [];
	return [
		subheading('Rods, their ends cut to the walls', width),
		...table(
			{
				columns: [
					{ head: 'Rod', width: { share: 1 } },
					{ head: 'Diameter', width: 24, align: 'end' },
					{ head: 'Longest', width: 24, align: 'end' },
					{ head: 'Each', width: 20, align: 'end' },
				],
				rows: box.rods.map((r) => ({
					cells: [
						r.name,
						figures.bench(r.diameter),
						figures.bench(r.length),
						showMass(r.mass, ruler),
					],
				})),
			},
			width,
		),
		space(4),
	];
}

function seamsTable(box: BoxFigures, width: number, figures: Figures): Block[] {
	if (box.seams.length === 0) return [];
	return [
		subheading('Seams: neighbouring edges carry the same letter', width),
		...table(
			{
				columns: [
					{ head: 'Seam', width: 12 },
					{ head: 'Between', width: { share: 1 } },
					{ head: 'Joint', width: 34 },
					{ head: 'Length', width: 22, align: 'end' },
					{ head: 'Screws', width: 16, align: 'end' },
					{ head: 'Apart', width: 20, align: 'end' },
				],
				rows: box.seams.map((s) => ({
					cells: [
						{ text: s.letter, weight: 'semibold' },
						s.between.join(' and '),
						s.kind,
						s.length === 0 ? 'whole face' : figures.bench(s.length),
						String(s.screws),
						s.spacing === null ? '' : figures.bench(s.spacing),
					],
				})),
				size: 2.9,
			},
			width,
		),
		...screwsText(box, width, figures),
		space(4),
	];
}

/** Where the screws of a seam go, which its table counts. */
function screwsText({ seams }: BoxFigures, width: number, figures: Figures): Block[] {
	if (seams.every((s) => s.screws === 0)) return [];
	const text = `Screws: the outer two ${figures.bench(SCREW_FROM_END)} from the ends of their seam, or a third of it where it is shorter than ${figures.bench(ticks(3 * SCREW_FROM_END))}, the others evenly between; each into the middle of the edge of the board it holds.`;
	return [paragraph(text, width, { size: 3 })];
}

function assemblyTable(box: BoxFigures, width: number, figures: Figures, ruler: Ruler): Block[] {
	if (box.assembly.length === 0) return [];
	return [
		subheading('Putting it together', width),
		...table(
			{
				columns: [
					{ head: '', width: 3.6 },
					{ head: '', width: 7, align: 'end' },
					{ head: '', width: { share: 1 } },
				],
				rows: box.assembly.map((step, i) => ({
					cells: [{ tick: true }, String(i + 1), stepText(step, figures, ruler)],
				})),
			},
			width,
		),
	];
}
