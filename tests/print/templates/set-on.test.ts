import { describe, expect, it } from 'vitest';
import { bounds } from '../../../src/lib/geometry';
import { toMm } from '../../../src/lib/measure';
import { plan } from '../../../src/lib/plan';
import { templatePages } from '../../../src/lib/print/pack';
import type { Spot } from '../../../src/lib/print/drawing/path';
import { round } from '../../../src/lib/print/drawing/text-box';
import { clipped } from '../../../src/lib/print/drawing/clip';
import type { PathMark } from '../../../src/lib/print/drawing/drawing';
import { blankTemplate } from '../../../src/lib/print/templates/blank-template';
import { partTemplate } from '../../../src/lib/print/templates/part-template';
import { onTheBack } from '../../../src/lib/wrap/marks/back-view';
import { sample } from '../../plan/samples';
import { wordsOn } from '../words-on';

const EVERYWHERE = { x: -1e6, y: -1e6, width: 2e6, height: 2e6 };
const made = await plan(sample('camper-bench.json'), { effort: 20, seed: 1 });
const pair = await plan(sample('hatchback-pair.json'), { effort: 20, seed: 1 });

function middle(mark: PathMark): Spot {
	const spots = clipped(mark.steps, EVERYWHERE).map(([, x, y]) => ({
		x: Number(x),
		y: Number(y),
	}));
	const box = round(spots);
	return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

describe('the template of a board', () => {
	const [panel] = made.panels;
	const detail = panel!.detail!;
	const part = made.parts.find((p) => p.id === `${panel!.id}.board`)!;
	const template = partTemplate(part, made);
	const box = bounds(detail.fit.board);

	it('shows every clip behind it where it lies seen from the front', () => {
		const drilled = template.marks.filter((m) => m.line === 'narrow').map(middle);
		expect(detail.fixings!.at.length).toBeGreaterThan(3);
		for (const p of detail.fixings!.at) {
			const x = toMm(p.x - box.x);
			const y = template.height - toMm(p.y - box.y);
			expect(drilled.some((d) => Math.hypot(d.x - x, d.y - y) < 0.05)).toBe(true);
		}
	});

	it('shows the layers on it, the groove in its back, and says which line is which', () => {
		const steps = detail.layers.filter((l) => l.on === null && l.piece !== null);
		expect(template.marks.filter((m) => m.line === 'dashed')).toHaveLength(steps.length);
		expect(template.marks.filter((m) => m.line === 'phantom')).toHaveLength(
			detail.groove!.runs.length,
		);
		expect(template.legend).toBe(
			'Thick: cut; thin: let in or drilled; dashed: what is set there; two dots: knife groove in the back; chain: centre lines.',
		);
		expect(template.top).toBe(90);
	});

	it('has no more to trace for it', () => {
		expect(template.traced).toEqual(partTemplate(part).traced);
	});
});

describe('the template of a cloth', () => {
	it('says which way up lies, as its back is seen', () => {
		const found = [made, pair].flatMap((p) =>
			p.blanks.flatMap((blank) => {
				const asked = p.job.panels.find(({ id }) => id === blank.owner);
				const { top } = blankTemplate(blank, p);
				if (asked === undefined) {
					expect(top).toBeNull();
					return [];
				}
				const right = blank.id.includes('-R');
				const up = onTheBack({ x: 0, y: 1 }, right ? 180 - asked.nap : asked.nap);
				const turn = (top! * Math.PI) / 180;
				expect(Math.cos(turn)).toBeCloseTo(up.x, 9);
				expect(Math.sin(turn)).toBeCloseTo(up.y, 9);
				return [right ? 'right' : 'other'];
			}),
		);
		expect(new Set(found)).toEqual(new Set(['right', 'other']));
	});

	it('bears the word on its pages', () => {
		const pages = templatePages(made, [made.blanks.find((b) => b.owner === 'cover-panel')!.id]);
		expect(pages.some((page) => wordsOn(page.marks).includes('TOP'))).toBe(true);
	});
});
