import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../../src/lib/print/drawing/drawing';
import { drawingSvg } from '../../../src/lib/print/pens/svg';
import { line } from '../../../src/lib/print/drawing/path';

const drawing: Drawing = {
	width: 100,
	height: 50,
	title: 'Sheet 1 <of> "2" & more',
	marks: [
		{ kind: 'path', steps: line(0, 0, 10, 0.12345678), line: 'dashed', of: 'part:B1' },
		{
			kind: 'text',
			x: 1,
			y: 2,
			text: '<b>&',
			size: 3,
			halo: true,
			of: 'cut:1',
			weight: 'semibold',
		},
	],
};

describe('the SVG pen', () => {
	const file = drawingSvg(drawing, { colours: 'inline' });
	const screen = drawingSvg(drawing, { colours: 'css' });

	it('writes files at true size in fixed colours', () => {
		expect(file).toContain('width="100mm" height="50mm" viewBox="0 0 100 50"');
		expect(file).toContain('stroke="#000000"');
		expect(file).not.toContain('var(');
	});

	it('writes for the screen in custom properties, so that it follows light and dark', () => {
		expect(screen).toContain('stroke="var(--ink)"');
		expect(screen).not.toMatch(/#[0-9a-f]{6}/);
		expect(screen).not.toContain('100mm');
	});

	it('names the drawing for screen readers and lets no text become markup', () => {
		expect(file).toContain('<title>Sheet 1 &lt;of&gt; &quot;2&quot; &amp; more</title>');
		expect(file).toContain('>&lt;b&gt;&amp;</text>');
	});

	it('marks what each thing is, for picking', () => {
		expect(file).toContain('data-of="part:B1"');
		expect(file).toContain('data-of="cut:1"');
	});

	it('puts paper behind text over a hatch and dashes hidden edges', () => {
		expect(file).toContain('paint-order="stroke"');
		expect(file).toContain('stroke-dasharray="2 1"');
	});

	it('refuses a figure that is none', () => {
		const broken = { ...drawing, marks: [{ kind: 'path' as const, steps: line(0, NaN, 1, 1) }] };
		expect(() => drawingSvg(broken, { colours: 'inline' })).toThrow(/^bug:/);
	});
});
