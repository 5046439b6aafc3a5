import type { JobFile } from '../../../job';
import { type Hand, type Length, mm, readLength, toMm } from '../../../measure';

type Stock = NonNullable<JobFile['stock']>;
type MaterialFile = NonNullable<Stock['materials']>[number];
type Kind = NonNullable<MaterialFile['kind']>;

/** What is said of a board in a line: 'MDF 15, measured 15.3'. */
export interface BoardWords {
	readonly name: string;
	readonly kind: Kind;
	readonly nominal: Length;
	readonly measured: Length;
	/** kg/m³. */
	readonly density: number;
}

/** Words that tell a kind, and its usual density, kg/m³; from memory, to be weighed. */
const KINDS: readonly (readonly [RegExp, Kind, number])[] = [
	[/\bmdf\b/i, 'mdf', 745],
	[/\b(hard|fibre|fiber)board\b|\bhdf\b/i, 'hardboard', 900],
	[/\b(particle|chip)board\b/i, 'particleboard', 650],
	[/\b(abs|pvc|acrylic|polycarbonate|plastic|hdpe)\b/i, 'plastic', 1100],
	[/\b(solid|oak|pine|spruce|beech|ash)\b/i, 'solid', 600],
	[/\bpoplar\b/i, 'plywood', 450],
	[/\bply(wood)?\b|\bbirch\b/i, 'plywood', 680],
];

/**
 * A line as it is said at the counter. The first figure is the thickness the seller names, one
 * after 'measured' what the caliper says; without one they are taken to be the same.
 */
export function readBoard(text: string, hand: Hand): BoardWords | { readonly fault: string } {
	const [said = '', caliper] = text.split(/[,;]?\s*\b(?:measured|really|is)\b\s*/i);
	const name = said.trim().replace(/[,;]$/, '');
	const figure = /(\d[\d.,/ -]*(?:mm|cm|in|")?)\s*$/i.exec(name)?.[1]?.trim();
	if (!figure) return { fault: 'Say what it is and how thick: MDF 15, or MDF 15, measured 15.3.' };
	const nominal = readLength(figure, hand);
	if (!nominal.ok || nominal.value <= 0)
		return { fault: `“${figure}” is no thickness. Write it last: MDF 15.` };
	const measured = caliper === undefined ? nominal : readLength(caliper.trim(), hand);
	if (!measured.ok || measured.value <= 0)
		return { fault: `“${caliper ?? ''}” is no measured thickness. Write: measured 15.3.` };
	const [, kind, density] = KINDS.find(([words]) => words.test(name)) ?? [null, 'other', 680];
	return { name, kind: kind, nominal: nominal.value, measured: measured.value, density };
}

/** What else is asked of a new board. */
export interface BoardAsked extends BoardWords {
	readonly sheet: { readonly length: Length; readonly width: Length; readonly price: number };
}

/** The file with the board and its sheet on the rack, and the mark it has got. */
export function withBoard(
	file: JobFile,
	asked: BoardAsked,
): { readonly file: JobFile; readonly id: string } {
	const stock = file.stock ?? {};
	const { name, kind, nominal, measured, density, sheet } = asked;
	const id = freeId(name, [...(stock.materials ?? []), ...(stock.sheets ?? [])]);
	const { length, width, price } = sheet;
	const board = { id, name, kind, nominal: toMm(nominal), measured: toMm(measured), density };
	const sold = { id, material: id, length: toMm(length), width: toMm(width), price };
	return {
		id,
		file: {
			...file,
			stock: {
				...stock,
				materials: [...(stock.materials ?? []), board],
				sheets: [...(stock.sheets ?? []), sold],
			},
		},
	};
}

/** 'MDF 15' -> 'mdf-15', or 'mdf-15-2' where that is taken. */
function freeId(name: string, taken: readonly { readonly id?: unknown }[]): string {
	const stem =
		name
			.normalize('NFD')
			.toLowerCase()
			.replace(/[^a-z0-9]+/g, '-')
			.replace(/^-|-$/g, '')
			.slice(0, 24) || 'board';
	const marks = new Set(taken.map((t) => t.id));
	let id = stem;
	for (let n = 2; marks.has(id); n++) id = `${stem}-${n}`;
	return id;
}

/** The size of sheet the rack has most kinds of; a common one where it has none. */
export function usualSheet(file: JobFile): { readonly length: Length; readonly width: Length } {
	const sizes = (file.stock?.sheets ?? []).flatMap(({ length, width }) =>
		typeof length === 'number' && typeof width === 'number' ? [`${length} ${width}`] : [],
	);
	const often = (size: string): number => sizes.filter((s) => s === size).length;
	const [best] = sizes.toSorted((a, b) => often(b) - often(a));
	const [length = 2440, width = 1220] = best?.split(' ').map(Number) ?? [];
	return { length: mm(length), width: mm(width) };
}
