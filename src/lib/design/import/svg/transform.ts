import { direction } from '../../../geometry';
import { after, SAME, type Affine } from '../affine';
import { numbersIn, pixelsOf, type Props } from './property';

/*
 * Transforms as an attribute writes them, plain numbers, and as a style writes them, numbers with
 * units (W3C, CSS Transforms Module Level 1, sections 8 "SVG and CSS transforms" and 9).
 */

/** A transform that could not be read: what was seen, and what would be right. */
export interface BadTransform {
	readonly seen: string;
	readonly fix: string;
}

/** What an element moves all in it by. */
export function transformOf(props: Props): Affine | BadTransform {
	const style = props.styled('transform');
	const other = OTHERS.find((name) => (props.styled(name) ?? 'none') !== 'none');
	if (other) return { seen: `${other}: ${props.styled(other)}`, fix: PLAIN };
	const text = style ?? props.of('transform') ?? '';
	if (text === '' || text === 'none') return SAME;
	const moved = style === undefined ? written(text) : styled(text);
	if (!moved) return { seen: text, fix: style === undefined ? PLAIN : WITH_UNITS };
	return aboutOrigin(moved, props);
}

const PLAIN =
	'Write it as an attribute of plain numbers, such as transform="translate(10 20) rotate(45)".';
const WITH_UNITS =
	'In a style a length needs its unit and an angle too, such as "transform: translate(10px, 20px) rotate(45deg)".';

/** Ways to move a thing that are not followed. */
const OTHERS = ['translate', 'rotate', 'scale', 'offset-path', 'perspective', 'zoom'];

const CALL = /[\s,]*([a-z]+)\s*\(([^()]*)\)\s*/iy;

function calls(text: string, each: (name: string, inside: string) => Affine | null): Affine | null {
	let all = SAME;
	const end = text.trimEnd().length;
	for (let at = 0; at < end; at = CALL.lastIndex) {
		CALL.lastIndex = at;
		const found = CALL.exec(text);
		const one = found && each(found[1] ?? '', found[2] ?? '');
		if (!one) return null;
		all = after(one, all);
	}
	return Object.values(all).every(Number.isFinite) ? all : null;
}

const written = (text: string): Affine | null =>
	calls(text, (name, inside) => {
		const n = numbersIn(inside);
		return n ? plainCall(name, n) : null;
	});

function plainCall(name: string, n: readonly number[]): Affine | null {
	const [a = 0, b, c] = n;
	const only = (...counts: number[]): boolean => counts.includes(n.length);
	switch (name) {
		case 'matrix':
			return only(6) ? matrix(n) : null;
		case 'translate':
			return only(1, 2) ? shift(a, b ?? 0) : null;
		case 'scale':
			return only(1, 2) ? matrix([a, 0, 0, b ?? a, 0, 0]) : null;
		case 'rotate':
			return only(1, 3) ? about(turn(a), b ?? 0, c ?? 0) : null;
		case 'skewX':
			return only(1) ? matrix([1, 0, tan(a), 1, 0, 0]) : null;
		case 'skewY':
			return only(1) ? matrix([1, tan(a), 0, 1, 0, 0]) : null;
		default:
			return null;
	}
}

const styled = (text: string): Affine | null =>
	calls(text, (name, inside) => {
		const parts = inside.split(',').map((part) => part.trim());
		return styledCall(name.toLowerCase(), parts);
	});

function styledCall(name: string, parts: readonly string[]): Affine | null {
	const kind = STYLED[name];
	const values = kind ? parts.map(kind.read) : [];
	if (!kind || values.length > kind.most || values.some((v) => v === null)) return null;
	const n = values as number[];
	return name === 'matrix' && n.length !== 6 ? null : kind.make(n);
}

interface Styled {
	readonly read: (part: string) => number | null;
	readonly most: number;
	readonly make: (n: readonly number[]) => Affine;
}

const STYLED: Readonly<Record<string, Styled | undefined>> = {
	matrix: { read: numberIn, most: 6, make: matrix },
	translate: { read: lengthOf, most: 2, make: ([x = 0, y = 0]) => shift(x, y) },
	translatex: { read: lengthOf, most: 1, make: ([x = 0]) => shift(x, 0) },
	translatey: { read: lengthOf, most: 1, make: ([y = 0]) => shift(0, y) },
	scale: { read: numberIn, most: 2, make: ([x = 1, y = x]) => matrix([x, 0, 0, y, 0, 0]) },
	scalex: { read: numberIn, most: 1, make: ([x = 1]) => matrix([x, 0, 0, 1, 0, 0]) },
	scaley: { read: numberIn, most: 1, make: ([y = 1]) => matrix([1, 0, 0, y, 0, 0]) },
	rotate: { read: degreesOf, most: 1, make: ([a = 0]) => turn(a) },
	skew: {
		read: degreesOf,
		most: 2,
		make: ([x = 0, y = 0]) => matrix([1, tan(y), tan(x), 1, 0, 0]),
	},
	skewx: { read: degreesOf, most: 1, make: ([x = 0]) => matrix([1, 0, tan(x), 1, 0, 0]) },
	skewy: { read: degreesOf, most: 1, make: ([y = 0]) => matrix([1, tan(y), 0, 1, 0, 0]) },
};

function numberIn(part: string): number | null {
	const n = numbersIn(part);
	return n?.length === 1 ? (n[0] ?? null) : null;
}

/** A bare number is a length only when it is nothing. */
function lengthOf(part: string): number | null {
	const bare = numberIn(part);
	return bare === null ? pixelsOf(part, null) : bare === 0 ? 0 : null;
}

const DEGREES: Readonly<Record<string, number>> = {
	deg: 1,
	grad: 0.9,
	rad: 180 / Math.PI,
	turn: 360,
};

function degreesOf(part: string): number | null {
	const found = /^([-+.\de]*[\d.])(deg|grad|rad|turn)$/i.exec(part);
	if (!found) return numberIn(part) === 0 ? 0 : null;
	const n = numberIn(found[1] ?? '');
	return n === null ? null : n * (DEGREES[(found[2] ?? '').toLowerCase()] ?? NaN);
}

/** Moved about a point of the drawing other than its origin. */
function aboutOrigin(moved: Affine, props: Props): Affine | BadTransform {
	const box = props.of('transform-box') ?? 'view-box';
	if (box !== 'view-box') return { seen: `transform-box: ${box}`, fix: PLAIN };
	const text = props.of('transform-origin');
	if (text === undefined) return moved;
	const at = text
		.split(/[\s,]+/)
		.map((part) => (/^(left|top)$/.test(part) ? 0 : pixelsOf(part, null)));
	const [x, y] = at;
	if (x === undefined || x === null || y === undefined || y === null || at.length > 2)
		return { seen: `transform-origin: ${text}`, fix: PLAIN };
	return about(moved, x, y);
}

function about(m: Affine, x: number, y: number): Affine {
	return x === 0 && y === 0 ? m : after(shift(-x, -y), after(m, shift(x, y)));
}

function matrix(n: readonly number[]): Affine {
	const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = n;
	return { a, b, c, d, e, f };
}

const shift = (x: number, y: number): Affine => matrix([1, 0, 0, 1, x, y]);
const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);

function turn(degrees: number): Affine {
	const { x: cos, y: sin } = direction(degrees);
	return matrix([cos, sin, -sin, cos, 0, 0]);
}
