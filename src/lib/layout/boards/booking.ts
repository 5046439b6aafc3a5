import { nth, toMm } from '../../measure';
import type { Job, JobFile } from '../../job';
import type { Cut, Gives, SheetLayout } from '../../nest';
import type { BoardLayouts } from '../layouts';
import { bookedIn, type Booking, type TakenStock, type Yielded } from '../booked';
import { offcutLabels } from './offcut-labels';
import { sourceOf } from './sheet-stock';

type Pinned = NonNullable<JobFile['pinned']>[number];

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

/** What booking a sheet as cut comes to; null when it is booked already. */
export function bookingOf(
	file: JobFile,
	job: Job,
	all: readonly BoardLayouts[],
	which: Which,
): Booking | null {
	const found = find(job, all, which);
	if (found.boards.sources[which.index]?.cut) return null;
	const at = pinnedPlace(file, found.boards, which.index);
	const record = pinnedOf(found, true);
	const pinned = file.pinned ?? [];
	const kept = at >= 0 ? pinned.map((p, i) => (i === at ? record : p)) : [...pinned, record];
	const taking = { takes: takenBy(job, found), yields: yieldsOf(found, takenOffcuts(file)) };
	return { takings: [taking], remnants: [], file: { ...file, pinned: kept } };
}

/**
 * Books a sheet as cut in a rack that nobody else draws on: it leaves the rack, its offcuts join
 * the rack under their printed labels. Returns a new file.
 */
export function bookCut(
	file: JobFile,
	job: Job,
	all: readonly BoardLayouts[],
	which: Which,
): JobFile {
	const booking = bookingOf(file, job, all, which);
	return booking ? bookedIn(booking) : file;
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

function takenBy(job: Job, { boards, layout }: Found): TakenStock {
	const { kind, id } = sourceOf(layout.sheet);
	const isOwn = kind === 'offcut' && !job.stock.offcuts.some((o) => o.id === id);
	return {
		kind: isOwn ? 'own' : kind,
		id,
		material: boards.material,
		length: toMm(layout.length),
		width: toMm(layout.width),
	};
}

function yieldsOf({ boards, layout, labels }: Found, taken: ReadonlySet<string>): Yielded[] {
	const fallen = layout.offcuts.map((o, i) => ({
		id: nth(labels, i),
		material: boards.material,
		length: toMm(o.length),
		width: toMm(o.width),
	}));
	return fallen.filter((o) => !taken.has(o.id));
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
