import { describe, expect, it } from 'vitest';
import { auditRoll } from '../../src/lib/nest/audit/roll';
import { auditSheets } from '../../src/lib/nest/audit/audit';
import { plan } from '../../src/lib/plan';
import { samples } from './samples';

const QUICK = { effort: 200 };

describe.each(samples)('$name', ({ file }) => {
	const made = plan(file, QUICK);

	it('has nothing that stops it', async () => {
		expect((await made).problems.filter((p) => p.kind === 'stop')).toEqual([]);
	});

	it('lays every part once, and the auditor passes every layout', async () => {
		const p = await made;
		for (const b of p.boards) {
			expect(b.faults).toEqual([]);
			if (b.sources.every((s) => !s.pinned)) expect(auditSheets(b.problem, b.answer)).toEqual([]);
		}
		const placed = p.boards.flatMap((b) =>
			b.answer.layouts.flatMap((l) => l.placed.map((q) => q.id)),
		);
		const asked = p.parts.flatMap((part) => Array<string>(part.count).fill(part.id));
		expect(placed.sort()).toEqual(asked.sort());
	});

	it('lays every blank once on a roll, and the auditor passes every roll', async () => {
		const p = await made;
		const rolls = p.cloths.flatMap((c) => c.rolls);
		for (const r of rolls) expect(auditRoll(r.problem, r.answer)).toEqual([]);
		const placed = rolls.flatMap((r) => r.answer.placed.map((q) => q.id));
		const asked = p.blanks.flatMap((b) => Array<string>(b.count).fill(b.id));
		expect(placed.sort()).toEqual(asked.sort());
	});

	it('pulls enough cloth, in the steps it is sold in, and never less than if the nap were ignored', async () => {
		const p = await made;
		for (const r of p.cloths.flatMap((c) => c.rolls)) {
			const step = p.job.stock.rolls.find((k) => k.id === r.roll)!.step;
			expect(r.pull).toBeGreaterThanOrEqual(r.answer.length);
			if (!r.owned) expect(r.pull % step).toBe(0);
			expect(r.napless).toBeLessThanOrEqual(r.answer.length);
		}
	});

	it('orders what the layouts take and quotes what adds up', async () => {
		const { boards, order, quote } = await made;
		const bought = boards
			.flatMap((b) => b.sources)
			.filter((s) => s.kind === 'buy' && !s.cut).length;
		const sheets = order.lines.filter((l) => l.group === 'sheets');
		expect(sheets.reduce((sum, l) => sum + l.buy, 0)).toBe(bought);
		for (const l of order.lines) expect(l.total, `${l.group} ${l.id}`).toBe(l.buy * l.each);
		expect(order.lines.reduce((sum, l) => sum + l.total, 0)).toBe(order.total);
		expect(quote.bought + quote.fromRack - quote.credit + quote.labourCost).toBe(quote.cost);
		expect(quote.cost + quote.profit).toBe(quote.net);
		expect(quote.lines.reduce((sum, l) => sum + l.price, 0)).toBe(
			quote.lines.length > 0 ? quote.net : 0,
		);
	});

	it('marks every part, blank and sheet so that no two carry the same', async () => {
		const { parts, blanks } = await made;
		for (const marks of [
			parts.map((p) => p.id),
			parts.map((p) => p.label),
			blanks.map((b) => b.id),
			blanks.map((b) => b.label),
		])
			expect(new Set(marks).size).toBe(marks.length);
	});

	it('is the same plan when made again', async () => {
		expect(await plan(file, QUICK)).toEqual(await made);
	});

	it('is plain data that crosses to a worker and back unchanged', async () => {
		const p = await made;
		expect(structuredClone(p)).toEqual(p);
	});
});
