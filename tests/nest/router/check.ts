import { expect } from 'vitest';
import type { Placed, RouterProblem, SheetLayout, SheetsAnswer } from '../../../src/lib/nest/types';

/** What must hold for any layout of rectangles by router, checked without the code of the nest. */
export function checkRouter(problem: RouterProblem, answer: SheetsAnswer): void {
	for (const layout of answer.layouts) checkSheet(problem, layout);
	for (const piece of problem.pieces) {
		const laid = answer.layouts.flatMap((l) => l.placed).filter((p) => p.id === piece.id);
		const left = answer.unplaced.filter((u) => u.id === piece.id).reduce((n, u) => n + u.count, 0);
		expect(laid.length + left).toBe(piece.count);
		expect(new Set(laid.map((p) => p.copy)).size).toBe(laid.length);
	}
	let cost = 0;
	for (const sheet of problem.sheets) {
		const used = answer.layouts.filter((l) => l.sheet === sheet.id);
		expect(used.length).toBeLessThanOrEqual(sheet.count ?? Infinity);
		expect(used.map((l) => l.copy).sort((a, b) => a - b)).toEqual(used.map((_, i) => i));
		cost += used.length * sheet.price;
	}
	expect(answer.cost).toBe(cost);
	expect(answer.bound.cost).toBeLessThanOrEqual(answer.cost);
	expect(answer.bound.sheets).toBeLessThanOrEqual(answer.layouts.length);
	for (const u of answer.unplaced) expect(u.why).toMatch(/^[A-Z].+\.$/);
}

function checkSheet(problem: RouterProblem, layout: SheetLayout): void {
	const sheet = problem.sheets.find((s) => s.id === layout.sheet)!;
	expect(layout.placed.length).toBeGreaterThan(0);
	const lie = [...layout.placed, ...layout.offcuts];
	lie.forEach((a, i) => {
		expect(a.x).toBeGreaterThanOrEqual(sheet.trim.left);
		expect(a.y).toBeGreaterThanOrEqual(sheet.trim.bottom);
		expect(a.x + a.length).toBeLessThanOrEqual(sheet.length - sheet.trim.right);
		expect(a.y + a.width).toBeLessThanOrEqual(sheet.width - sheet.trim.top);
		for (const b of lie.slice(i + 1)) {
			const dx = Math.max(a.x - b.x - b.length, b.x - a.x - a.length);
			const dy = Math.max(a.y - b.y - b.width, b.y - a.y - a.width);
			expect(Math.max(dx, dy)).toBeGreaterThanOrEqual(problem.bit);
		}
	});
	for (const placed of layout.placed) checkTurn(problem, placed);
}

function checkTurn(problem: RouterProblem, placed: Placed): void {
	const piece = problem.pieces.find((p) => p.id === placed.id)!;
	const allowed = { any: [0, 90, 180, 270], half: [0, 180], none: [0] }[piece.turns];
	expect(allowed).toContain(placed.turn);
	const quarter = placed.turn === 90 || placed.turn === 270;
	expect(placed.length).toBe(quarter ? piece.width : piece.length);
	expect(placed.width).toBe(quarter ? piece.length : piece.width);
}
