import { nth, toMm } from '../../measure';
import type { Job, JobFile } from '../../job';
import type { Cut, Gives, SheetLayout } from '../../nest';
import type { BoardLayouts } from '../layouts';
import { offcutLabels } from './offcut-labels';
import { sourceOf } from './sheet-stock';

type Pinned = NonNullable<JobFile['pinned']>[number];
type StockFile = NonNullable<JobFile['stock']>;

/**
 * Which laid-out sheet of a plan is meant: its material and its place among that material's
 * layouts.
 */
export interface Which {
	readonly material: string;
	readonly index: number;
}

/**
 * Keeps a layout as it is: it has been printed. Returns a new file; the one given is left alone.
 */
export function pinSheet(
	file: JobFile,
	job: Job,
	all: readonly BoardLayouts[],
	which: Which,
): JobFile {
	const found = find(job, all, which);
	if (found.boards.sources[which.index]?.pinned) return file;
	return { ...file, pinned: [...(file.pinned ?? []), pinnedOf(found, false)] };
}

/** Lets a printed layout go again. A sheet that was cut stays. */
export function unpinSheet(
	file: JobFile,
	job: Job,
	all: readonly BoardLayouts[],
	which: Which,
): JobFile {
	const pinned = file.pinned ?? [];
	const at = pinnedPlace(file, find(job, all, which).boards, which.index);
	if (at < 0 || pinned[at]?.cut) return file;
	return { ...file, pinned: pinned.filter((_, i) => i !== at) };
}

/**
 * Books a sheet as cut: it leaves the rack, its offcuts join the rack under their printed labels,
 * and its layout is kept as the record of what was made. Returns a new file.
 */
export function bookCut(
	file: JobFile,
	job: Job,
	all: readonly BoardLayouts[],
	which: Which,
): JobFile {
	const found = find(job, all, which);
	const { boards, layout } = found;
	if (boards.sources[which.index]?.cut) return file;
	const stock = withOffcuts(usedUp(file.stock ?? {}, layout.sheet), found, takenOffcuts(file));
	const at = pinnedPlace(file, boards, which.index);
	const record = pinnedOf(found, true);
	const pinned = file.pinned ?? [];
	return {
		...file,
		stock,
		pinned: at >= 0 ? pinned.map((p, i) => (i === at ? record : p)) : [...pinned, record],
	};
}

/** A laid-out sheet with the labels of its offcuts. */
interface Found {
	readonly boards: BoardLayouts;
	readonly layout: SheetLayout;
	readonly labels: readonly string[];
}

function find(job: Job, all: readonly BoardLayouts[], { material, index }: Which): Found {
	const boards = all.find((b) => b.material === material);
	const layout = boards?.answer.layouts[index];
	if (!boards || !layout) throw new Error(`bug: ${material} has no layout ${index}`);
	return { boards, layout, labels: offcutLabels(job, all).get(material)?.[index] ?? [] };
}

/**
 * Offcuts that were cut up before the sheet they fall off was booked: they never reach the rack.
 */
function takenOffcuts(file: JobFile): ReadonlySet<string> {
	const cut = (file.pinned ?? []).filter((p) => p.cut).map((p) => sourceOf(p.sheet));
	return new Set(cut.filter((s) => s.kind === 'offcut').map((s) => s.id));
}

/** Pinned layouts of a material come first among its layouts, in the order of the file. */
function pinnedPlace(file: JobFile, boards: BoardLayouts, index: number): number {
	if (!boards.sources[index]?.pinned) return -1;
	const places = (file.pinned ?? []).flatMap((p, i) => (p.material === boards.material ? [i] : []));
	return places[index] ?? -1;
}

/** The rack with one sheet or offcut less; a sheet that is bought for the job was never on it. */
function usedUp(stock: StockFile, sheet: string): StockFile {
	const { kind, id } = sourceOf(sheet);
	if (kind === 'owned')
		return {
			...stock,
			sheets: (stock.sheets ?? []).map((s) =>
				s.id === id ? { ...s, owned: Math.max(0, (s.owned ?? 0) - 1) } : s,
			),
		};
	if (kind === 'offcut')
		return {
			...stock,
			offcuts: (stock.offcuts ?? [])
				.map((o) => (o.id === id ? { ...o, count: (o.count ?? 1) - 1 } : o))
				.filter((o) => (o.count ?? 1) > 0),
		};
	return stock;
}

function withOffcuts(stock: StockFile, found: Found, taken: ReadonlySet<string>): StockFile {
	const racked = found.layout.offcuts.map((o, i) => ({
		id: nth(found.labels, i),
		material: found.boards.material,
		length: toMm(o.length),
		width: toMm(o.width),
	}));
	const fresh = racked.filter((o) => !taken.has(o.id));
	return { ...stock, offcuts: [...(stock.offcuts ?? []), ...fresh] };
}

function pinnedOf({ boards, layout, labels }: Found, cut: boolean): Pinned {
	return {
		material: boards.material,
		sheet: layout.sheet,
		length: toMm(layout.length),
		width: toMm(layout.width),
		placed: layout.placed.map((p) => ({ id: p.id, ...rect(p), turn: p.turn })),
		cuts: layout.cuts.map(cutInMm),
		offcuts: layout.offcuts.map((o, i) => ({ ...rect(o), label: nth(labels, i) })),
		cut,
	};
}

function rect(r: { x: number; y: number; length: number; width: number }) {
	return { x: toMm(r.x), y: toMm(r.y), length: toMm(r.length), width: toMm(r.width) };
}

function cutInMm(c: Cut): NonNullable<Pinned['cuts']>[number] {
	const give = (g: Gives) => ({ ...g, rect: rect(g.rect) });
	return {
		...c,
		region: rect(c.region),
		at: toMm(c.at),
		fence: toMm(c.fence),
		gives: [give(c.gives[0]), give(c.gives[1])],
		...(c.from ? { from: { x: toMm(c.from.x), y: toMm(c.from.y) } } : {}),
		...(c.to ? { to: { x: toMm(c.to.x), y: toMm(c.to.y) } } : {}),
	};
}
