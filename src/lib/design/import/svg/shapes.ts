import { numbersIn, pixelsOf, type Props } from './property';

/** The size that lengths in parts of a hundred are taken of; null when the drawing has none. */
type Whole = { readonly width: number; readonly height: number } | null;

/** A length or list of a shape that cannot be read, by its name. */
export interface BadShape {
	readonly bad: string;
	readonly seen: string;
}

/** The path data of a basic shape (or of a path itself), as the format defines it. */
export function pathOf(name: string, props: Props, whole: Whole): string | BadShape {
	const n = lengthsOf(props, whole);
	const data = dataOf(name, props, n);
	return n.bad ?? data;
}

interface Lengths {
	(name: string): number;
	/** The first that could not be read. */
	bad?: BadShape;
}

function lengthsOf(props: Props, whole: Whole): Lengths {
	const n: Lengths = (name) => {
		const text = props.of(name) ?? '';
		if (text === '' || text === 'auto') return 0;
		const length = pixelsOf(text, whole && wholeOf(name, whole));
		if (length === null) n.bad ??= { bad: name, seen: text };
		return length ?? 0;
	};
	return n;
}

/** Across for what lies across, up for what lies up, and the mean of both for a radius. */
function wholeOf(name: string, { width, height }: { width: number; height: number }): number {
	if (/x|width/.test(name)) return width;
	return /y|height/.test(name) ? height : Math.hypot(width, height) / Math.SQRT2;
}

function dataOf(name: string, props: Props, n: Lengths): string {
	switch (name) {
		case 'path':
			if (props.styled('d') !== undefined) n.bad = { bad: 'd', seen: 'a path within its style' };
			return props.of('d') ?? '';
		case 'rect':
			return rectPath([n('x'), n('y'), n('width'), n('height')], radii(props, n));
		case 'circle':
			return ellipsePath(n('cx'), n('cy'), n('r'), n('r'));
		case 'ellipse': {
			const [rx, ry] = radii(props, n);
			return ellipsePath(n('cx'), n('cy'), rx, ry);
		}
		case 'line':
			return `M${n('x1')} ${n('y1')}L${n('x2')} ${n('y2')}`;
		case 'polyline':
			return pointsPath(props, n, '');
		case 'polygon':
			return pointsPath(props, n, 'Z');
		default:
			return '';
	}
}

/** One that is not given is the other. */
function radii(props: Props, n: Lengths): readonly [number, number] {
	const given = (name: string): boolean => !['', 'auto'].includes(props.of(name) ?? '');
	const rx = n(given('rx') ? 'rx' : 'ry');
	const ry = n(given('ry') ? 'ry' : 'rx');
	return [Math.max(0, rx), Math.max(0, ry)];
}

function rectPath(
	[x, y, w, h]: readonly [number, number, number, number],
	r: readonly [number, number],
): string {
	if (w <= 0 || h <= 0) return '';
	const rx = Math.min(r[0], w / 2);
	const ry = Math.min(r[1], h / 2);
	if (rx === 0 || ry === 0) return `M${x} ${y}H${x + w}V${y + h}H${x}Z`;
	const arc = (ex: number, ey: number): string => `A${rx} ${ry} 0 0 1 ${ex} ${ey}`;
	return (
		`M${x + rx} ${y}H${x + w - rx}${arc(x + w, y + ry)}V${y + h - ry}${arc(x + w - rx, y + h)}` +
		`H${x + rx}${arc(x, y + h - ry)}V${y + ry}${arc(x + rx, y)}Z`
	);
}

function ellipsePath(cx: number, cy: number, rx: number, ry: number): string {
	if (rx <= 0 || ry <= 0) return '';
	return `M${cx - rx} ${cy}A${rx} ${ry} 0 0 1 ${cx + rx} ${cy}A${rx} ${ry} 0 0 1 ${cx - rx} ${cy}Z`;
}

function pointsPath(props: Props, n: Lengths, end: string): string {
	const text = props.of('points') ?? '';
	const numbers = numbersIn(text);
	if (!numbers || numbers.length % 2 === 1) {
		n.bad = { bad: 'points', seen: text };
		return '';
	}
	const pairs: string[] = [];
	for (let i = 0; i + 1 < numbers.length; i += 2) pairs.push(`${numbers[i]} ${numbers[i + 1]}`);
	return pairs.length > 1 ? `M${pairs.join('L')}${end}` : '';
}
