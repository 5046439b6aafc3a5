import {
	type Drawing,
	type Ink,
	type Mark,
	type PathMark,
	type PathStep,
	type PhotoMark,
	type TextMark,
	escaped,
	FAMILY,
	settable,
} from '../drawing';
import { HALO, PAPER, STROKES } from './pens';

interface SvgPen {
	/**
	 * inline: fixed colours, for files. css: custom properties (`--ink`), so that a screen follows
	 * light and dark.
	 */
	readonly colours: 'inline' | 'css';
}

/**
 * The drawing as one SVG element, its unit the millimetre: a file measures true, a screen scales it
 * as it likes.
 */
export function drawingSvg(drawing: Drawing, pen: SvgPen): string {
	const { width, height } = drawing;
	const size = pen.colours === 'inline' ? ` width="${num(width)}mm" height="${num(height)}mm"` : '';
	return (
		`<svg xmlns="http://www.w3.org/2000/svg"${size} viewBox="0 0 ${num(width)} ${num(height)}" role="img"` +
		`${OUR_HAND}><title>${escaped(drawing.title)}</title>` +
		drawing.marks.map((mark) => markSvg(mark, pen)).join('') +
		'</svg>'
	);
}

/** How every drawing of this pen says how its letters and lines are set. */
const OUR_HAND =
	` font-family="${FAMILY}" style="font-kerning:none;font-variant-ligatures:none"` +
	` stroke-linejoin="round" stroke-linecap="butt"`;

function markSvg(mark: Mark, pen: SvgPen): string {
	if (mark.kind === 'path') return pathSvg(mark, pen);
	return mark.kind === 'text' ? textSvg(mark, pen) : photoSvg(mark);
}

function pathSvg(mark: PathMark, pen: SvgPen): string {
	const fill = mark.fill === undefined ? 'none' : colour(mark.fill, pen);
	const rule = mark.evenOdd === true ? ' fill-rule="evenodd"' : '';
	return `<path d="${pathData(mark.steps)}" fill="${fill}"${rule}${strokeSvg(mark, pen)}${ofSvg(mark)}/>`;
}

function strokeSvg(mark: PathMark, pen: SvgPen): string {
	if (mark.line === undefined) return '';
	const { width, dash } = STROKES[mark.line];
	const dashes = dash.length === 0 ? '' : ` stroke-dasharray="${dash.join(' ')}"`;
	return ` stroke="${colour(mark.ink ?? 'ink', pen)}" stroke-width="${width}"${dashes}`;
}

function pathData(steps: readonly PathStep[]): string {
	return steps
		.map(([letter, ...numbers]) => letter + (numbers as readonly number[]).map(num).join(' '))
		.join('');
}

function textSvg(mark: TextMark, pen: SvgPen): string {
	const { x, y } = mark;
	const anchor = mark.anchor ?? 'start';
	const turn = mark.turn ?? 0;
	const halo = `" stroke="${colour('sheet', pen)}" stroke-width="${num(mark.size * HALO)}" paint-order="stroke`;
	return (
		`<text x="${num(x)}" y="${num(y)}" font-size="${num(mark.size)}"` +
		(anchor === 'start' ? '' : ` text-anchor="${anchor}"`) +
		(mark.weight === 'semibold' ? ' font-weight="600"' : '') +
		(turn === 0 ? '' : ` transform="rotate(${num(-turn)} ${num(x)} ${num(y)})"`) +
		` fill="${colour(mark.ink ?? 'ink', pen)}${mark.halo === true ? halo : ''}"${ofSvg(mark)}>` +
		`${escaped(settable(mark.text))}</text>`
	);
}

function photoSvg(mark: PhotoMark): string {
	const { x, y, width, height, jpeg, shows } = mark;
	return (
		`<image x="${num(x)}" y="${num(y)}" width="${num(width)}" height="${num(height)}"` +
		` aria-label="${escaped(shows)}" href="data:image/jpeg;base64,${escaped(jpeg)}"${ofSvg(mark)}/>`
	);
}

function ofSvg(mark: Mark): string {
	return mark.of === undefined ? '' : ` data-of="${escaped(mark.of)}"`;
}

function colour(ink: Ink, pen: SvgPen): string {
	return pen.colours === 'css' ? `var(--${ink})` : PAPER[ink];
}

/** A ten-thousandth of a millimetre is finer than any printer. */
function num(n: number): string {
	if (!Number.isFinite(n)) throw new Error(`bug: ${n} in a drawing`);
	return String(Math.round(n * 1e4) / 1e4 + 0);
}
