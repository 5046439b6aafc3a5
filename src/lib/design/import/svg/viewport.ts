import type { Affine } from '../affine';
import type { DrawingFile } from '../drawing-file';
import { lengthIn, numbersIn, PIXEL_MM, pixelsOf, type Props } from './property';

/*
 * A frame with a view box of its own scales what lies in it (W3C, SVG 2, sections 8.6 "The viewBox
 * attribute", 8.7 "The preserveAspectRatio attribute" and 8.2 "Computing the equivalent transform
 * of an SVG viewport").
 */

interface Size {
	readonly width: number;
	readonly height: number;
}

interface ViewBox extends Size {
	readonly x: number;
	readonly y: number;
}

/** How things lie in a frame, and the size of the frame for lengths given in parts of it. */
export interface Viewport {
	readonly to: Affine;
	readonly inside: Size | null;
}

/** Why a frame cannot be read: what it says, and what would be right. */
export interface BadFrame {
	readonly what: string;
	readonly fix: string;
}

/** The outermost frame: what it says of the true size, and how much x and y differ in scale. */
export function outerViewport(
	props: Props,
): (Viewport & { readonly says: DrawingFile['says'] }) | BadFrame {
	const box = viewBoxOf(props);
	if (box && 'what' in box) return box;
	const [width, height] = [absolute(props, 'width'), absolute(props, 'height')];
	if (!box) {
		const inside = width && height ? { width: width.pixels, height: height.pixels } : null;
		const real = [width, height].some((side) => side && side.unit !== '');
		return { to: scaled(1, 1, 0, 0), inside, says: real ? saying(PIXEL_MM) : null };
	}
	const [sx, sy] = scales(
		box,
		{ width: width?.pixels ?? null, height: height?.pixels ?? null },
		fitOf(props),
	);
	const real = [width, height].every((side) => !side || side.unit !== '') && (width ?? height);
	return {
		to: scaled(1, sx > 0 && sy > 0 ? sy / sx : 1, 0, 0),
		inside: box,
		says: real ? saying(sx * PIXEL_MM) : null,
	};
}

/** A frame within: null when its width or height is nothing, so that nothing of it is seen. */
export function innerViewport(props: Props, outer: Size | null): Viewport | BadFrame | null {
	const box = viewBoxOf(props);
	if (box && 'what' in box) return box;
	const side = (name: string, usual: string, whole: number | null): number | null =>
		pixelsOf(auto(props.of(name), usual), whole);
	const x = side('x', '0', outer?.width ?? null);
	const y = side('y', '0', outer?.height ?? null);
	const width = side('width', '100%', outer?.width ?? null);
	const height = side('height', '100%', outer?.height ?? null);
	if (x === null || y === null) return unplaced;
	if (width === 0 || height === 0) return null;
	if (!box) {
		const inside = width && height ? { width, height } : null;
		return { to: scaled(1, 1, x, y), inside };
	}
	if (width === null || height === null || width < 0 || height < 0) return unplaced;
	const fit = fitOf(props);
	const [sx, sy] = scales(box, { width, height }, fit);
	const left = x - box.x * sx + fit.x * (width - box.width * sx);
	const top = y - box.y * sy + fit.y * (height - box.height * sy);
	return { to: scaled(sx, sy, left, top), inside: box };
}

const unplaced: BadFrame = {
	what: 'an svg within the svg does not say its place and size',
	fix: 'Give it x, y, width and height as numbers, or take its content out of it (ungroup) and save again.',
};

const auto = (text: string | undefined, usual: string): string =>
	text === undefined || text === 'auto' ? usual : text;

const saying = (mm: number): DrawingFile['says'] => (mm > 0 ? { mm, name: null } : null);

const scaled = (a: number, d: number, e: number, f: number): Affine => ({ a, b: 0, c: 0, d, e, f });

function absolute(props: Props, name: string): ReturnType<typeof lengthIn> {
	const found = lengthIn(props.of(name) ?? '');
	return found && found.pixels > 0 ? found : null;
}

function viewBoxOf(props: Props): ViewBox | BadFrame | null {
	const text = props.of('viewBox');
	if (text === undefined || text === '') return null;
	const [x, y, width, height, more] = numbersIn(text) ?? [];
	if (x !== undefined && y !== undefined && width !== undefined && height !== undefined)
		if (more === undefined && width > 0 && height > 0) return { x, y, width, height };
	return {
		what: `the viewBox "${text.slice(0, 40)}" cannot be read`,
		fix: 'Write left, top, width and height, the last two above nothing, such as viewBox="0 0 300 200".',
	};
}

interface Fit {
	readonly kind: 'none' | 'meet' | 'slice';
	/** Share of what is left over that lies before it. */
	readonly x: number;
	readonly y: number;
}

const SHARE: Readonly<Record<string, number>> = { Min: 0, Mid: 0.5, Max: 1 };

function fitOf(props: Props): Fit {
	const text = props.of('preserveAspectRatio') ?? '';
	const found = /^(?:defer\s+)?x(Min|Mid|Max)Y(Min|Mid|Max)(?:\s+(meet|slice))?$/.exec(text);
	if (text === 'none' || /^none\s/.test(text)) return { kind: 'none', x: 0, y: 0 };
	return {
		kind: found?.[3] === 'slice' ? 'slice' : 'meet',
		x: SHARE[found?.[1] ?? 'Mid'] ?? 0.5,
		y: SHARE[found?.[2] ?? 'Mid'] ?? 0.5,
	};
}

/** Pixels to a unit of the view box, along x and y; a side not given follows the other. */
function scales(
	box: ViewBox,
	size: { readonly width: number | null; readonly height: number | null },
	{ kind }: Fit,
): readonly [number, number] {
	const x = size.width === null ? null : size.width / box.width;
	const y = size.height === null ? null : size.height / box.height;
	const [sx, sy] = [x ?? y ?? 1, y ?? x ?? 1];
	if (kind === 'none') return [sx, sy];
	const one = kind === 'meet' ? Math.min(sx, sy) : Math.max(sx, sy);
	return [one, one];
}
