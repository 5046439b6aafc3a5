import type { GrowthRow, BenchTable } from './families';

/*
 * Bars per class for sheets above the bound, and time against pieces; plain SVG, readable without
 * colour.
 */

const WIDE = 760;
const BAR_HIGH = 170;
const LEFT = 46;

const text = (x: number, y: number, words: string, anchor = 'middle'): string =>
	`<text x="${x}" y="${y}" text-anchor="${anchor}">${words}</text>`;

function bars(table: BenchTable, top: number): string {
	const rows = [...table.rows, table.total];
	const above = (n: number, bound: number): number => (100 * (n - bound)) / Math.max(1, bound);
	const most = Math.max(
		1,
		...rows.map((r) => Math.max(above(r.first, r.bound), above(r.packer ?? r.bound, r.bound))),
	);
	const foot = top + BAR_HIGH - 24;
	const scale = (BAR_HIGH - 60) / most;
	const step = (WIDE - LEFT) / rows.length;
	const series = [
		{ of: (r: (typeof rows)[number]) => r.ours, fill: '#1b1b1b' },
		{ of: (r: (typeof rows)[number]) => r.first, fill: 'url(#lines)' },
		{ of: (r: (typeof rows)[number]) => r.packer ?? r.bound, fill: '#fff' },
	];
	const marks = rows.flatMap((r, i) => {
		const x = LEFT + i * step;
		const shapes = series.map(({ of, fill }, k) => {
			const high = above(of(r), r.bound) * scale;
			return `<rect x="${(x + 6 + (k * (step - 12)) / 3).toFixed(1)}" y="${(foot - high).toFixed(1)}" width="${((step - 18) / 3).toFixed(1)}" height="${high.toFixed(1)}" fill="${fill}" stroke="#1b1b1b" stroke-width="0.7"/>`;
		});
		return [...shapes, text(x + step / 2, foot + 16, r.group)];
	});
	const turning = table.turns === 'any' ? 'quarter turns' : 'fixed orientation';
	return [
		text(0, top + 14, `${table.title}, ${turning}: sheets above the bound, per cent`, 'start'),
		text(
			0,
			top + 30,
			'black: ours; hatched: our first layout; white: free rectangle packer, best mode',
			'start',
		),
		`<path d="M${LEFT} ${foot}H${WIDE}" stroke="#1b1b1b"/>`,
		text(LEFT - 6, foot - most * scale + 4, most.toFixed(1), 'end'),
		text(LEFT - 6, foot + 4, '0', 'end'),
		...marks,
	].join('\n');
}

function growth(rows: readonly GrowthRow[], top: number): string {
	const high = 150;
	const foot = top + high + 40;
	const x = (n: number): number => LEFT + ((Math.log10(n) - 1) / 2.4) * (WIDE - LEFT - 40);
	const y = (ms: number): number => foot - ((Math.log10(Math.max(ms, 0.1)) + 1) / 4) * high;
	const line = rows.map((r) => `${x(r.pieces).toFixed(1)},${y(r.firstMs).toFixed(1)}`).join(' ');
	return [
		text(0, top + 14, 'First layout: milliseconds against pieces', 'start'),
		`<path d="M${LEFT} ${top + 40}V${foot}H${WIDE}" fill="none" stroke="#1b1b1b"/>`,
		...[0.1, 1, 10, 100, 1000].map((ms) => text(LEFT - 6, y(ms) + 4, String(ms), 'end')),
		...rows.map((r) => text(x(r.pieces), foot + 16, String(r.pieces))),
		...rows.map(
			(r) => `<circle cx="${x(r.pieces).toFixed(1)}" cy="${y(r.firstMs).toFixed(1)}" r="3"/>`,
		),
		`<polyline points="${line}" fill="none" stroke="#1b1b1b" stroke-width="1.5"/>`,
	].join('\n');
}

export function chart(tables: readonly BenchTable[], rows: readonly GrowthRow[] | null): string {
	const parts = tables.map((t, i) => bars(t, 10 + i * BAR_HIGH));
	const below = 20 + tables.length * BAR_HIGH;
	if (rows) parts.push(growth(rows, below));
	const high = below + (rows ? 230 : 0);
	return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-10 0 ${WIDE + 20} ${high}" width="${WIDE + 20}" height="${high}" font-family="sans-serif" font-size="12">
<defs><pattern id="lines" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V5" stroke="#1b1b1b" stroke-width="1.4"/></pattern></defs>
<rect x="-10" width="${WIDE + 20}" height="${high}" fill="#fff"/>
${parts.join('\n')}
</svg>
`;
}
