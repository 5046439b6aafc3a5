import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { plan, type Plan } from '../../src/lib/plan';
import type { Drawing, Mark } from '../../src/lib/print/drawing';
import { orStandIn } from '../../src/lib/print/drawing/stand-in';
import { printPack } from '../../src/lib/print/pack';
import { panelDrawings } from '../../src/lib/print/panel';

const words = (marks: readonly Mark[]): string =>
	marks.flatMap((m) => (m.kind === 'text' ? [m.text] : [])).join(' ');

describe('a drawing that cannot be made', () => {
	const whole: Drawing = { width: 10, height: 10, title: 'Front', marks: [] };

	it('is itself where it can', () => {
		expect(orStandIn('Front', () => whole)).toBe(whole);
	});

	it('is a box under its own title that says so', () => {
		for (const what of ['bug: no entry 3 in a list of 2', 'torn']) {
			const box = orStandIn('Front', () => {
				throw new Error(what);
			});
			expect(box.title).toBe('Front');
			expect(box.fault).toBe(what.replace('bug: ', ''));
			expect(words(box.marks)).toContain('This drawing could not be made');
			expect(words(box.marks)).toContain(box.fault);
		}
	});

	it('is the box where a place in it is no number', () => {
		const path: Mark = { kind: 'path', steps: [['M', NaN, 0]], line: 'wide' };
		const text: Mark = { kind: 'text', text: 'x', x: 1, y: Infinity, size: 3 };
		for (const odd of [path, text])
			expect(orStandIn('Front', () => ({ ...whole, marks: [odd] })).fault).toContain('no number');
	});
});

describe('a plan with something in it that cannot be drawn', async () => {
	const file: unknown = JSON.parse(
		readFileSync(new URL('../../shared/jobs/panel-stepped-cover.json', import.meta.url), 'utf8'),
	);
	const sound = await plan(file, { effort: 20 });
	const pages = printPack(sound);
	const [first] = sound.panels;
	const torn = (change: object): Plan => ({
		...sound,
		panels: sound.panels.map((p) =>
			p === first && p.detail ? { ...p, detail: { ...p.detail, ...change } } : p,
		),
	});

	it('has every other drawing of that panel', () => {
		const broken = torn({ groove: { path: 'torn' } });
		const drawings = panelDrawings(broken, broken.panels[0]!);
		// The board and its cover have a groove in their backs: a box that says so stands for each.
		const grooved = ['P1 Stepped cover', 'P1.3 Battery cover'];
		const others = (list: readonly Drawing[]): string[] =>
			list.map((d) => d.title).filter((t) => !grooved.includes(t.replace(/: back$/, '')));
		expect(others(drawings)).toEqual(others(panelDrawings(sound, first!)));
		expect(
			drawings
				.filter((d) => d.fault !== undefined)
				.map((d) => d.title)
				.sort(),
		).toEqual(grooved);
	});

	it('has every other page of the pack, the summary counting them', () => {
		const broken = printPack(torn({ fit: null }));
		const faulted = broken.filter((p) => p.fault !== undefined);
		expect(faulted.length).toBeGreaterThan(0);
		const names = (list: typeof pages) => new Set(list.map((p) => p.name));
		for (const name of ['Summary', 'Cautions', 'Quote'])
			expect(names(broken).has(name)).toBe(names(pages).has(name));
		expect(broken.length).toBeGreaterThan(pages.length / 2);
		expect(pages.some((p) => p.fault !== undefined)).toBe(false);
	});
});
