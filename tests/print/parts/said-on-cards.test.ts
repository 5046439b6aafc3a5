import { expect, it } from 'vitest';
import { plan } from '../../../src/lib/plan';
import { printPack } from '../../../src/lib/print/pack';
import { sample } from '../../plan/samples';
import { wordsOn } from '../words-on';

const made = await plan(sample('camper-bench.json'), { effort: 20, seed: 1 });
const said = printPack(made)
	.map((page) => wordsOn(page.marks).join(' '))
	.join(' ');

it('a hole for a clip is not drilled through', () => {
	expect(made.panels.some((p) => p.detail?.fixings?.kind === 'clips')).toBe(true);
	expect(said).toMatch(
		/Holes \d+ to \d+ clips: \d+\s×\sØ\s[\d.]+, as deep as the clip reaches, not/,
	);
});

it('a hole for a clip is as deep as asked, and a screw without a depth goes through', async () => {
	const job = sample('camper-bench.json') as { panels: { fixings?: object | null }[] };
	const deep = job.panels.map((p) =>
		p.fixings ? { ...p, fixings: { ...p.fixings, depth: 9 } } : p,
	);
	const told = printPack(await plan({ ...job, panels: deep }, { effort: 20, seed: 1 }))
		.map((page) => wordsOn(page.marks).join(' '))
		.join(' ');
	expect(told).toMatch(/clips: \d+\s×\sØ\s[\d.]+, 9 deep/);
	expect(told).toMatch(/screws: \d+\s×\sØ\s[\d.]+, 9 deep/);
	expect(told).not.toContain('as deep as the clip reaches');
	expect(said).toMatch(/screws: \d+\s×\sØ\s[\d.]+ (?!, )/);
});

it('what a person could get wrong at the saw is told where it is done', () => {
	const words = said.replaceAll('\u00a0', ' ');
	expect(words).toMatch(/its sharp edge lies on the table at the fence: clamp a straight strip/);
	expect(words).toMatch(/not through: measure a clip and set a stop/);
	const slants = made.boards.flatMap(({ answer }) =>
		answer.layouts.flatMap(({ cuts }) => cuts.filter((c) => c.kind === 'slant')),
	);
	expect(slants.length).toBeGreaterThan(0);
	expect(words).toContain('Slanted cuts: mark both ends on the piece as it lies then');
	for (const { n, gives } of slants)
		expect(words.includes(`f cut ${n} it is the edge of `)).toBe(
			gives.every((g) => g.kind !== 'waste'),
		);
});

it('a cover is told its finished size and its gap', () => {
	const covers = made.panels.flatMap((p) => p.detail?.covers ?? []);
	expect(covers.length).toBeGreaterThan(0);
	expect(said).toMatch(/Finished [\d.]+ mm × [\d.]+ mm, gap [\d.]+ mm all round/);
});

it('the screws of a seam have their places', () => {
	expect(said).toContain('Screws: the outer two 50 from the ends of their seam');
});
