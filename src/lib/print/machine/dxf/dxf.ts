import { cornerAt, type Outline, type Point } from '../../../geometry';
import { TICKS_PER_MM } from '../../../measure';
import { CHECK_LINE, barAt, saidUnder } from '../beside';
import { LAYERS, type LayerName } from '../layers';
import { roundOf, type MachineDrawing, type MachineLine } from '../machine-drawing';

/*
 * The drawing exchange format as text, version AC1009, which every machine's program reads: pairs
 * of lines, a group code and its value. Sections, entities and their codes are those of the
 * format's published reference (release 12): 0 what it is, 8 layer, 10/20/30 a point, 40 radius or
 * height, 42 the bulge of the edge after a vertex, 66 vertices follow, 70 flags, 62 colour. The
 * unit has a header variable only since AC1015; it stands here as well, for programs look for it
 * whatever the version and pass over what they do not know (from memory), and in words.
 */

type Pair = readonly [code: number, value: string | number];

/** One drawing as a file, in millimetres. */
export function writeDxf(drawing: MachineDrawing): string {
	const pairs = [
		...section('HEADER', header(drawing)),
		...section('TABLES', tables()),
		...section('ENTITIES', entities(drawing)),
		...[[0, 'EOF'] as const],
	];
	return pairs.map(([code, value]) => `${code}\r\n${value}\r\n`).join('');
}

function section(name: string, of: readonly Pair[]): Pair[] {
	return [[0, 'SECTION'], [2, name], ...of, [0, 'ENDSEC']];
}

const MILLIMETRES = 4;

function header({ length, width }: MachineDrawing): Pair[] {
	return [
		...([
			[9, '$ACADVER'],
			[1, 'AC1009'],
		] as const),
		...([
			[9, '$INSUNITS'],
			[70, MILLIMETRES],
		] as const),
		...([[9, '$EXTMIN'], ...point({ x: 0, y: 0 })] as const),
		...([[9, '$EXTMAX'], ...point({ x: length, y: width })] as const),
	];
}

function tables(): Pair[] {
	const names = ['0', ...Object.keys(LAYERS)];
	const solid: Pair[] = [
		...([
			[0, 'LTYPE'],
			[2, 'CONTINUOUS'],
			[70, 64],
			[3, 'Solid line'],
		] as const),
		...([
			[72, 65],
			[73, 0],
			[40, 0],
		] as const),
	];
	const layers = names.flatMap((name): Pair[] => [
		...([
			[0, 'LAYER'],
			[2, name],
			[70, 64],
		] as const),
		...([
			[62, LAYERS[name as LayerName]?.number ?? 7],
			[6, 'CONTINUOUS'],
		] as const),
	]);
	return [...table('LTYPE', 1, solid), ...table('LAYER', names.length, layers)];
}

function table(name: string, count: number, of: readonly Pair[]): Pair[] {
	return [[0, 'TABLE'], [2, name], [70, count], ...of, [0, 'ENDTAB']];
}

function entities(drawing: MachineDrawing): Pair[] {
	const bar = barAt(drawing);
	return [
		...drawing.lines.flatMap(lineOf),
		...drawing.texts.flatMap(({ at, size, text }) => textOf(at, size, text, CENTRED)),
		...saidUnder(drawing).flatMap(({ at, size, text }) => textOf(at, size, text)),
		...straight('TEXT', bar, { x: bar.x + CHECK_LINE, y: bar.y }),
	];
}

function lineOf({ layer, line, closed }: MachineLine): Pair[] {
	const round = closed ? roundOf(line) : null;
	if (round)
		return [[0, 'CIRCLE'], [8, layer], ...point(round.centre), [40, millimetres(round.radius)]];
	const [a, b, ...more] = line;
	if (!closed && a && b && more.length === 0 && !a.bulge) return straight(layer, a, b);
	return polyline(layer, line, closed);
}

function straight(layer: LayerName, a: Point, b: Point): Pair[] {
	const end = point(b).map(([code, value]): Pair => [code + 1, value]);
	return [[0, 'LINE'], [8, layer], ...point(a), ...end];
}

/** Arcs stay arcs: their bulge is the same figure here and in the plan. */
function polyline(layer: LayerName, line: Outline, closed: boolean): Pair[] {
	const vertices = line.flatMap((corner, i): Pair[] => {
		const bulge = closed || i < line.length - 1 ? (cornerAt(line, i).bulge ?? 0) : 0;
		return [
			[0, 'VERTEX'],
			[8, layer],
			...point(corner),
			...(bulge === 0 ? [] : [[42, bulge] as const]),
		];
	});
	return [
		...([
			[0, 'POLYLINE'],
			[8, layer],
			[66, 1],
		] as const),
		...point({ x: 0, y: 0 }),
		[70, closed ? 1 : 0],
		...vertices,
		...([
			[0, 'SEQEND'],
			[8, layer],
		] as const),
	];
}

/** Set by its middle: 72 and 73, with the place under 11 as well. */
const CENTRED: readonly Pair[] = [
	[72, 1],
	[73, 2],
];

function textOf(at: Point, size: number, text: string, set: readonly Pair[] = []): Pair[] {
	const second = point(at).map(([code, value]): Pair => [code + 1, value]);
	return [
		...([
			[0, 'TEXT'],
			[8, 'TEXT'],
		] as const),
		...point(at),
		[40, millimetres(size)],
		[1, asciiOf(text)],
		...(set.length > 0 ? [...set, ...second] : []),
	];
}

function point({ x, y }: Point): Pair[] {
	return [
		[10, millimetres(x)],
		[20, millimetres(y)],
		[30, '0.0'],
	];
}

/** A half tick in full: 7 places after the point. */
function millimetres(ticks: number): string {
	const text = (ticks / TICKS_PER_MM).toFixed(7).replace(/0+$/, '');
	return text.endsWith('.') ? `${text}0` : text;
}

/** Signs of our own that ASCII has a word for. */
const WORDS: Readonly<Record<string, string>> = { '×': 'x', '·': '-', '°': ' deg', '⌀': 'dia.' };

/**
 * Letters beyond ASCII by their number; a caret, which announces a control sign, and a doubled per
 * cent, which announces a special one, as themselves; no line of the file is broken by a name.
 */
function asciiOf(text: string): string {
	const plain = text
		.replace(/[\s\p{Cc}]+/gu, ' ')
		.replace(/[×·°⌀]/g, (sign) => WORDS[sign] ?? sign)
		.replaceAll('^', '^ ')
		.replace(/%(?=%)/g, '% ');
	return [...Array(plain.length).keys()]
		.map((i) => {
			const code = plain.charCodeAt(i);
			const number = code.toString(16).toUpperCase().padStart(4, '0');
			return code < 127 ? plain.charAt(i) : `\\U+${number}`;
		})
		.join('');
}
