import { describe, expect, test } from 'vitest';
import { stepsOf } from '../../steps';
import { drawShape } from '../../../src/lib/design/panel/fit/draw-shape';
import type { Drawn, Undrawn } from '../../../src/lib/design/shape/drawn';
import { outlineShape } from '../../../src/lib/job/panel/outline';
import { said, sizes } from '../panel/drawn-figures';

const MM = { unit: 'mm', fraction: 32, decimal: '.' } as const;

const svg = (text: string, more: object = {}): Drawn | Undrawn =>
	drawShape(outlineShape.parse({ kind: 'svg', text, unit: 'mm', ...more }), MM);
/** A rectangle of 300 x 200 in the drawing, and a larger one that must not be taken. */
const SEEN = '<rect width="300" height="200"/>';
const LARGE = 'width="900" height="800"';
const asked = (d: Drawn | Undrawn): [number, number] => [sizes(d).length, sizes(d).width];

/* W3C, SVG 2, 11.4 "Controlling visibility", and CSS 2, 11.2: `display` takes all within along,
 * `visibility` is inherited and may be taken back within. A style goes before an attribute (CSS
 * cascade, presentation attributes). */
describe('what cannot be seen is no part of the drawing', () => {
	test.each([
		['display of a shape by style', `<rect style="fill:red; display:none" ${LARGE}/>`],
		['with spaces and weight', `<rect style="display : none !important" ${LARGE}/>`],
		['display by attribute', `<rect display="none" ${LARGE}/>`],
		['display of a group', `<g style="display:none"><g><rect ${LARGE}/></g></g>`],
		[
			'taken along, whatever is said within',
			`<g display="none"><rect display="inline" ${LARGE}/></g>`,
		],
		['visibility by style', `<rect style="visibility:hidden" ${LARGE}/>`],
		['visibility by attribute, inherited', `<g visibility="hidden"><g><rect ${LARGE}/></g></g>`],
		['visibility collapse', `<rect visibility="collapse" ${LARGE}/>`],
		[
			'the style goes before the attribute',
			`<rect display="inline" style="display:none" ${LARGE}/>`,
		],
	])('%s', (_, hidden) => {
		const d = svg(`<svg>${SEEN}${hidden}</svg>`);
		expect(asked(d)).toEqual([300, 200]);
		expect(d.complaints).toEqual([]);
	});

	test('shown again within a hidden group, and a comment in a style', () => {
		const again = `<svg><g visibility="hidden"><rect visibility="visible" ${LARGE}/></g></svg>`;
		expect(asked(svg(again))).toEqual([900, 800]);
		const comment = `<svg><rect style="/* display:none */ fill:red" ${LARGE}/></svg>`;
		expect(asked(svg(comment))).toEqual([900, 800]);
	});

	test('where all of it is hidden that is said', () => {
		const d = svg(`<svg><g style="display:none">${SEEN}</g></svg>`);
		expect(said(d)).toContain('what is in it is hidden');
		expect(said(d)).toContain('Show the outline');
	});

	test('a style sheet that might hide or move something is named; one of colours is not', () => {
		const sheet = (rule: string): string => `<svg><style>${rule}</style>${SEEN}</svg>`;
		expect(said(svg(sheet('.a{display:none}')))).toContain('style sheet');
		expect(said(svg(sheet('<![CDATA[.a{transform:scale(2)}]]>')))).toContain('style sheet');
		expect(svg(sheet('.a{fill:red;stroke-width:2}')).complaints).toEqual([]);
	});
});

/* W3C, SVG 2, 8.2 and 8.6 to 8.8: the equivalent transform of an svg viewport. The figures are
 * worked by hand: a frame of 400 x 200 on a view box of 100 x 100 meets at 2, slices at 4, and
 * without keeping the ratio is 4 along and 2 up. */
describe('an svg within the svg', () => {
	const inner = (more: string): string =>
		`<svg><svg x="10" y="20" width="400" height="200" viewBox="0 0 100 100" overflow="visible" ${more}><rect width="50" height="40"/></svg></svg>`;
	test.each([
		['', 100, 80],
		['preserveAspectRatio="xMinYMax meet"', 100, 80],
		['preserveAspectRatio="xMidYMid slice"', 200, 160],
		['preserveAspectRatio="none"', 200, 80],
	])('scales what is in it: %s', (more, length, width) => {
		expect(asked(svg(inner(more)))).toEqual([length, width]);
	});

	test.each([
		// Scaled by 2 in a frame of 400 x 200 all of 100 x 100 leaves 200 along over: before it lie
		// none, half, or all of that.
		['xMinYMid', 10, 20],
		['xMidYMid', 110, 20],
		['xMaxYMid', 210, 20],
	])('places it: %s', (fit, x, y) => {
		expect(drawnPlace(inner(`preserveAspectRatio="${fit}"`))).toEqual([x, y]);
	});

	/** Where the rectangle lies in the drawing: measured on one line from the origin to it. */
	function drawnPlace(text: string): [number, number] {
		const from = text.replace('<rect width="50" height="40"/>', '<path d="M0 0 h50 v40"/>');
		const [, x, y] = /a gap of [\d.]+ mm from ([-\d.]+), ([-\d.]+) to/.exec(said(svg(from)))!;
		return [Number(x), Number(y)];
	}

	test('in units, in parts of the frame round it, in another one', () => {
		const units = `<svg><svg width="2in" height="96px" viewBox="0 0 192 96"><rect width="100" height="50"/></svg></svg>`;
		expect(asked(svg(units))).toEqual([100, 50]);
		const part = `<svg viewBox="0 0 400 400" width="400mm"><svg width="50%" height="50%" viewBox="0 0 100 100"><svg viewBox="0 0 10 10"><rect width="5" height="4"/></svg></svg></svg>`;
		// Half of 400 on 100, and 100 on 10: twenty times.
		expect(asked(svg(part))).toEqual([100, 80]);
	});

	test('of no width it is not drawn; of a width nobody knows it is refused with its line', () => {
		const none = `<svg>${SEEN}<svg width="0" height="9" viewBox="0 0 1 1"><rect ${LARGE}/></svg></svg>`;
		expect(asked(svg(none))).toEqual([300, 200]);
		const unknown = svg(`<svg>\n\n<svg viewBox="0 0 1 1">${SEEN}</svg></svg>`);
		expect(unknown.outline).toBeNull();
		expect(said(unknown)).toContain('In line 3');
		expect(said(unknown)).toContain('width and height');
		expect(said(svg(`<svg viewBox="0 0 0 10">${SEEN}</svg>`))).toContain('viewBox "0 0 0 10"');
	});

	test('what reaches beyond its frame is read whole, and that is said', () => {
		const cut = `<svg><svg width="100" height="100"><rect width="300" height="50"/></svg></svg>`;
		expect(asked(svg(cut))).toEqual([300, 50]);
		expect(said(svg(cut))).toContain('reach beyond its frame');
		expect(svg(cut.replace('width="300"', 'width="100"')).complaints).toEqual([]);
	});
});

/* W3C, CSS Transforms Module Level 1: the property is a style too, its lengths and angles with
 * units; the attribute takes plain numbers (section 8). */
describe('transforms', () => {
	test.each([
		['style="transform: scale(2)"', 600, 400],
		['style="transform:scale(2, 3)"', 600, 600],
		['style="transform: rotate(90deg)"', 200, 300],
		['style="transform: rotate(0.25turn) translate(10px, 1cm)"', 200, 300],
		['style="transform: rotate(100grad)"', 200, 300],
		['style="transform: scaleX(2) scaleY(0.5)"', 600, 100],
		['style="transform: matrix(0, 1, -1, 0, 5, 6)"', 200, 300],
		['style="transform: skew(45deg)"', 500, 200],
		['style="transform: skewX(45deg)"', 500, 200],
		['style="transform:scale(2)" transform="scale(5)"', 600, 400],
		['style="transform: none" transform="scale(5)"', 300, 200],
		['transform="scale(2)translate(4-3),rotate(90 1,2)"', 400, 600],
		['transform=" skewY( 45 ) "', 300, 500],
		['transform=""', 300, 200],
	])('%s', (how, length, width) => {
		const d = svg(`<svg><g ${how}>${SEEN}</g></svg>`);
		expect(sizes(d).length).toBeCloseTo(length, 2);
		expect(sizes(d).width).toBeCloseTo(width, 2);
		expect(d.complaints).toEqual([]);
	});

	test('about a point of its own', () => {
		// Scaled by 2 about 300, 0 the rectangle ends where it ended: with a line from 0 it closes.
		const both = (origin: string): string =>
			said(
				svg(
					`<svg><path d="M0 0h300v200" style="transform:scale(2);transform-origin:${origin}"/></svg>`,
				),
			);
		expect(both('300px 0')).toContain('from -300, 0 to 300, 400');
		expect(both('50% 0')).toContain('transform-origin: 50% 0');
	});

	test.each([
		'transform="rotate(45deg"',
		'transform="rotate(45deg)"',
		'transform="scale(2) turn(5)"',
		'transform="matrix(1 0 0 1 5)"',
		'transform="scale(2"',
		'transform="scale(1e999)"',
		'transform="translate(10px, 5px)"',
		'style="transform: translate(10, 5)"',
		'style="transform: rotate(45)"',
		'style="transform: rotate3d(1, 0, 0, 45deg)"',
		'style="rotate: 45deg"',
		'style="transform: scale(2); transform-box: fill-box"',
	])('that cannot be read are refused with line and text: %s', (how) => {
		const d = svg(`<svg>\n<g ${how}>${SEEN}</g></svg>`);
		expect(d.outline).toBeNull();
		expect(said(d)).toContain('In line 2 of the SVG, at <g>, the transform');
		expect(said(d)).toContain('such as');
	});
});

/* CSS Values and Units Module Level 3, 5.2 "Absolute lengths": 1in is 96px is 2.54cm is 72pt is
 * 6pc, 1Q is a quarter of a millimetre. */
describe('the size the file states', () => {
	const file = (root: string): string => `<svg ${root}><rect width="100" height="50"/></svg>`;
	test.each([
		['width="300mm" viewBox="0 0 100 100"', 300],
		['width="30cm" viewBox="0 0 100 100"', 300],
		['width="1200Q" viewBox="0 0 100 100"', 300],
		['width="10in" viewBox="0 0 254 100"', 100],
		['width="720pt" viewBox="0 0 254 9"', 100],
		['width="60pc" viewBox="0 0 254 9"', 100],
		['width="960px" viewBox="0 0 254 9"', 100],
		['height="100mm" viewBox="0 0 9 50"', 200],
		['style="width:300mm" viewBox="0 0 100 100"', 300],
		['width="300mm" height="100mm" viewBox="0 0 100 100"', 100],
		[
			'width="300mm" height="100mm" viewBox="0 0 100 100" preserveAspectRatio="xMinYMin slice"',
			300,
		],
		['width="300mm"', 26.46],
	])('is taken where the unit is left to the file: %s', (root, length) => {
		const d = svg(file(root), { unit: 'file' });
		expect(sizes(d).length).toBeCloseTo(length, 2);
		expect(sizes(d).width).toBeCloseTo(length / 2, 1);
		expect(d.complaints).toEqual([]);
	});

	test('without keeping the ratio x and y differ', () => {
		const none = 'width="300mm" height="100mm" viewBox="0 0 100 100" preserveAspectRatio="none"';
		expect(asked(svg(file(none), { unit: 'file' }))).toEqual([300, 50]);
	});

	test('is held against a unit that was chosen, and asked for where nobody says it', () => {
		expect(said(svg(file('width="300mm" viewBox="0 0 100 100"')))).toContain('one unit is 3 mm');
		for (const root of ['', 'width="300" viewBox="0 0 100 100"', 'width="100%"']) {
			const d = svg(file(root), { unit: 'file' });
			expect(d.outline).toBeNull();
			expect(said(d)).toContain('does not say how long one of its units is');
			expect(said(d)).toContain('about 100 by 50');
			expect(said(d)).toContain('Choose the unit');
			expect(svg(file(root)).complaints).toEqual([]);
		}
		expect(said(svg('M0 0h10v10z', { unit: 'file' }))).toContain('Choose the unit');
	});

	test('lengths of shapes have units too; those that hang on a letter are refused', () => {
		expect(sizes(svg('<svg><rect width="1in" height="48"/></svg>')).length).toBeCloseTo(96, 6);
		const half = '<svg viewBox="0 0 200 100"><rect width="50%" height="100%"/></svg>';
		expect(asked(svg(half))).toEqual([100, 100]);
		expect(
			asked(svg('<svg><rect style="width:90px;height:50px" width="1" height="2"/></svg>')),
		).toEqual([90, 50]);
		for (const bad of ['10em', 'wide', '5 0', '1e400']) {
			const d = svg(`<svg><rect width="${bad}" height="5"/></svg>`);
			expect(d.outline).toBeNull();
			expect(said(d)).toContain(`In line 1 of the SVG, at <rect>, width is "${bad}"`);
		}
		const points = (list: string): Drawn | Undrawn => svg(`<svg><polygon points="${list}"/></svg>`);
		expect(asked(points('0,0 100,0,100-50'))).toEqual([100, 50]);
		expect(said(points('0,0 100,0 1OO,50'))).toContain('points is');
		expect(said(points('0,0 100,0 100'))).toContain('points is');
	});
});

test('what is passed over is named with how many', () => {
	const d = svg(`<svg><defs><linearGradient id="a"/></defs><defs><path id="p" d="M0 0h5"/></defs>
		<symbol><rect ${LARGE}/></symbol><clipPath id="c"><rect ${LARGE}/></clipPath><use href="#p"/><use href="#p"/>
		<text>door</text><image href="a.png"/><draw:note/><g clip-path="url(#c)">${SEEN}</g></svg>`);
	expect(asked(d)).toEqual([300, 200]);
	expect(said(d)).toContain('1 defs, 1 symbol, 1 clippath, 2 use, 1 text, 1 image.');
	expect(said(d)).toContain('clipped or masked');
	expect(said(d)).toContain('nothing was fetched');
});

describe('a torn or swollen text is refused with its line, at no great cost', () => {
	test.each([
		['<svg>\n<g>', 'line 2'],
		['<svg>\n<g></svg>', '</svg> closes <g>'],
		['<svg>\n<g a=1/></svg>', 'line 2'],
		['<svg><!-- torn', 'a comment opened there is never closed'],
		['<svg><![CDATA[ torn', 'CDATA'],
		['<?xml torn', 'an instruction'],
		['<!DOCTYPE svg [ <!ENTITY a "b">', 'a document type'],
		['<html><svg/></html>', '<html>, not <svg>'],
		['</svg>', 'closes nothing'],
	])('%s', (text, words) => {
		expect(said(svg(text))).toContain(words);
	});

	const heaps: [string, (n: number) => string][] = [
		['comments never closed', (n) => '<svg>' + '<!--'.repeat(n / 4)],
		['CDATA never closed', (n) => '<svg>' + '<![CDATA['.repeat(n / 9)],
		['instructions never closed', (n) => '<svg>' + '<?'.repeat(n / 2)],
		['document types never closed', (n) => '<!DOCTYPE['.repeat(n / 10)],
		['comments that are closed', (n) => '<svg>' + '<!---->'.repeat(n / 7)],
		['quotes never closed', (n) => '<svg a="' + " b='".repeat(n / 4)],
		['styles of comments', (n) => `<svg style="${'/*'.repeat(n / 2)}"/>`],
		['groups in groups', (n) => '<g>'.repeat(n / 3)],
		['attributes', (n) => '<svg ' + 'a="" '.repeat(n / 5) + '/>'],
		['brackets of a transform', (n) => `<svg transform="${'scale('.repeat(n / 6)}"/>`],
	];
	test.each(heaps)('%s: four times the text is no more than four times the work', (_, heap) => {
		const cost = (n: number): number => stepsOf(() => expect(svg(heap(n)).outline).toBeNull());
		expect(cost(160_000)).toBeLessThan(4.2 * cost(40_000) + 1000);
		expect(cost(160_000)).toBeLessThan(16 * 160_000);
	});

	test('deep groups, many elements and long path data are said; made-up letters stay letters', () => {
		const deep = svg(`<svg>${'<g>'.repeat(20_000)}${SEEN}${'</g>'.repeat(20_000)}</svg>`);
		expect(said(deep)).toContain('deeper than they are followed');
		expect(said(svg(`<svg>${'<a/>'.repeat(120_000)}</svg>`))).toContain(
			'more than 100000 elements',
		);
		expect(said(svg(`<svg><path d="M0 0${'h1v1'.repeat(90_000)}z"/></svg>`))).toContain(
			'more than 20000 edges',
		);
		expect(said(svg(`M0 0${'h1v1'.repeat(90_000)}z`))).toContain('far too long');
		const curves = `<svg><path d="M0 0${'C9e8 1 -9e8 9e8 5 5'.repeat(3000)}z"/></svg>`;
		expect(said(svg(curves))).toContain('more than 20000 edges');
		const laughs = `<!DOCTYPE svg [<!ENTITY a "&b;&b;"><!ENTITY b "&a;">]><svg id="&a;">${SEEN}</svg>`;
		expect(asked(svg(laughs))).toEqual([300, 200]);
		expect(asked(svg('<svg><path d="M0&#32;0h&#x39;v5z"/></svg>'))).toEqual([9, 5]);
	});
});

test('a sign without its number is said where it stands, and no figure is made of it', () => {
	const drawn = svg('<svg xmlns="http://www.w3.org/2000/svg"><path d="M50 50 100 1-.Cz"/></svg>');
	const words = drawn.complaints.map(({ what, fix }) => `${what} ${fix}`).join('\n');
	expect(words).toMatch(/cannot be read to the end/);
	expect(words).not.toMatch(/NaN/);
});
