import { nth } from '../../lib/measure';
import { type GrowthRow, type BenchTable, type UseRow, growthPower } from './families';

/** A table in plain text that is also a table where text is set. */
function grid(head: readonly string[], rows: readonly (readonly string[])[]): string {
	const width = head.map((h, i) => Math.max(h.length, ...rows.map((r) => nth(r, i).length)));
	const line = (cells: readonly string[]): string =>
		`| ${cells.map((c, i) => c.padStart(nth(width, i))).join(' | ')} |`;
	const rule = `|${width.map((w) => `${'-'.repeat(w + 1)}:`).join('|')}|`;
	return [line(head), rule, ...rows.map(line)].join('\n');
}

export function sheetsText(table: BenchTable): string {
	const turning = table.turns === 'any' ? 'quarter turns' : 'fixed orientation';
	const head = [
		'class',
		'instances',
		'bound',
		'first layout',
		'ours',
		'proven',
		'packer',
		's each',
	];
	const rows = [...table.rows, table.total].map((r) => [
		r.group,
		String(r.instances),
		String(r.bound),
		String(r.first),
		String(r.ours),
		String(r.proven),
		String(r.packer ?? ''),
		(r.seconds / r.instances).toFixed(2),
	]);
	return `${table.title}, ${turning}: sheets\n\n${grid(head, rows)}\n\nPacker: free placement, best single mode (${table.packerWay}); most of its layouts no saw could cut.\nBound: by area and dual feasible functions; where it is met only because of a proof, no layout by saw takes fewer.\n`;
}

export function sizesText(rows: readonly UseRow[]): string {
	const head = ['class', 'instances', 'first layout', 'ours', 'proven', 'at most', 'published'];
	const cells = rows.map((r) => [
		r.group,
		String(r.instances),
		r.first.toFixed(2),
		r.ours.toFixed(2),
		String(r.proven),
		r.most.toFixed(2),
		r.published?.toFixed(2) ?? '',
	]);
	return `Several sizes of sheet, fixed orientation: mean utilisation in per cent\n\n${grid(head, cells)}\n\nAt most: what the bounds, and the proofs where there is one, leave possible by saw on these instances.\nPublished: means over all 50 instances of a class, of which these are a part.\n`;
}

export function growthText(rows: readonly GrowthRow[]): string {
	const head = ['pieces', 'first layout, ms', 'first, sheets', 'ours, sheets', 'bound'];
	const cells = rows.map((r) => [
		String(r.pieces),
		r.firstMs.toFixed(1),
		String(r.first),
		String(r.ours),
		String(r.bound),
	]);
	return `Growth, boards of 2440 x 1220 mm, kerf 3.2 mm, every piece different\n\n${grid(head, cells)}\n\nFrom 100 pieces up the time of the first layout grows with the power ${growthPower(rows).toFixed(2)} of their number.\n`;
}
