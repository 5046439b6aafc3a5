import { cornerAt, type Outline, type Point } from '../../../geometry';
import { TICKS_PER_MM } from '../../../measure';
import { escaped, settable, textWidth } from '../../drawing';
import { CHECK_LINE, barAt, depthBelow, saidUnder } from '../beside';
import { LAYERS, type LayerName } from '../layers';
import {
	roundOf,
	type MachineDrawing,
	type MachineLine,
	type MachineText,
} from '../machine-drawing';

/** Clear of the outermost line, mm. */
const RIM = 5;
/** Of a line, mm. */
const HAIR = 0.1;
/** A capital letter is so much of the size of its text. */
const CAPITAL = 0.7;

/**
 * One drawing as SVG at true scale: its unit is the millimetre, each layer a group of its name.
 */
export function writeSvg(drawing: MachineDrawing): string {
	const box = boxOf(drawing);
	const groups = (Object.keys(LAYERS) as LayerName[]).map((layer) => group(drawing, layer));
	return (
		`<svg xmlns="http://www.w3.org/2000/svg" width="${num(box.width)}mm" height="${num(box.height)}mm"` +
		` viewBox="${[box.x, box.y, box.width, box.height].map(num).join(' ')}" fill="none"` +
		` stroke-width="${HAIR}"><title>${escaped(settable(drawing.title))}</title>${groups.join('')}</svg>\n`
	);
}

/** Drawing and notes; y counts down, its zero at the lower edge of the drawing. */
function boxOf(drawing: MachineDrawing): Record<'x' | 'y' | 'width' | 'height', number> {
	const notes = saidUnder(drawing).map((n) => textWidth(n.text, toMillimetres(n.size) / CAPITAL));
	const wide = Math.max(toMillimetres(drawing.length), toMillimetres(CHECK_LINE), ...notes);
	const tall = toMillimetres(drawing.width);
	const below = toMillimetres(depthBelow(drawing));
	return { x: -RIM, y: -tall - RIM, width: wide + 2 * RIM, height: tall + below + 2 * RIM };
}

function group(drawing: MachineDrawing, layer: LayerName): string {
	const lines = drawing.lines.filter((l) => l.layer === layer).map(lineOf);
	const words = layer === 'TEXT' ? wordsOf(drawing) : [];
	const all = [...lines, ...words];
	if (all.length === 0) return '';
	return `<g id="${layer}" stroke="${LAYERS[layer].colour}">${all.join('')}</g>`;
}

function lineOf({ line, closed }: MachineLine): string {
	const round = closed ? roundOf(line) : null;
	if (round) {
		const { x, y } = spot(round.centre);
		return `<circle cx="${x}" cy="${y}" r="${num(toMillimetres(round.radius))}"/>`;
	}
	return `<path d="${pathOf(line, closed)}"/>`;
}

function pathOf(line: Outline, closed: boolean): string {
	const edges = closed ? line.length : line.length - 1;
	const steps = [...Array(Math.max(0, edges)).keys()].map((i) => edgeOf(line, i));
	const { x, y } = spot(cornerAt(line, 0));
	return `M${x} ${y}${steps.join('')}${closed ? 'Z' : ''}`;
}

/** An edge that turns left turns against the clock on paper too: its sweep flag is 0. */
function edgeOf(line: Outline, i: number): string {
	const from = cornerAt(line, i);
	const to = cornerAt(line, i + 1);
	const { x, y } = spot(to);
	const bulge = from.bulge ?? 0;
	if (bulge === 0) return `L${x} ${y}`;
	const chord = toMillimetres(Math.hypot(to.x - from.x, to.y - from.y));
	const radius = num((chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge)));
	return `A${radius} ${radius} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 0 : 1} ${x} ${y}`;
}

function wordsOf(drawing: MachineDrawing): string[] {
	const bar = barAt(drawing);
	const line: MachineLine = {
		layer: 'TEXT',
		line: [bar, { x: bar.x + CHECK_LINE, y: bar.y }],
		closed: false,
	};
	return [
		...drawing.texts.map((text) =>
			textOf(text, ' text-anchor="middle" dominant-baseline="central"'),
		),
		...saidUnder(drawing).map((text) => textOf(text, '')),
		lineOf(line),
	];
}

function textOf({ at, size, text }: MachineText, set: string): string {
	const { x, y } = spot(at);
	return (
		`<text x="${x}" y="${y}" font-family="sans-serif" font-size="${num(toMillimetres(size) / CAPITAL)}"` +
		` fill="${LAYERS.TEXT.colour}" stroke="none"${set}>${escaped(settable(text))}</text>`
	);
}

const toMillimetres = (ticks: number): number => ticks / TICKS_PER_MM;

const spot = (p: Point): { x: string; y: string } => ({
	x: num(toMillimetres(p.x)),
	y: num(-toMillimetres(p.y)),
});

/** Seven places: half a tick in full. */
const num = (n: number): string => String(Math.round(n * 1e7) / 1e7 + 0);
