import { nth, toMm } from '../../measure';
import type { Part } from '../../design';
import type { Job, JobFile } from '../../job';
import type { Cut, Gives, SheetLayout } from '../../nest';
import type { BoardLayouts } from '../layouts';
import { bookedIn, type Booking, type TakenStock, type Yielded } from '../booked';
import { asCut } from './as-cut';
import { type Which, withoutPlaces } from './hand-edits';
import { offcutLabels } from './offcut-labels';
import { sourceOf } from './sheet-stock';

type Pinned = NonNullable<JobFile['pinned']>[number];

/**
 * Keeps a layout as it is: it has been printed. Returns a new file; the one given is left alone.
 */
export function pinSheet(
	file: JobFile,
	job: Job,
	all: readonly BoardLayouts[],
	which: Which,
): JobFile {
	const found = findSheet(job, all, which);
	if (pinnedPlace(file, found, which.index) >= 0) return file;
	const freed = withoutPlaces(file, placesOn(found, which));
	return { ...freed, pinned: [...(file.pinned ?? []), pinnedOf(found, false)] };
}

/** Lets a printed layout go again. A sheet that was cut stays. */
export function unpinSheet(
	file: JobFile,
	job: Job,
	all: readonly BoardLayouts[],
	which: Which,
): JobFile {
	const pinned = file.pinned ?? [];
	const at = pinnedPlace(file, findSheet(job, all, which), which.index);
	if (at < 0 || pinned[at]?.cut) return file;
	return { ...file, pinned: pinned.filter((_, i) => i !== at) };
}

/**
 * What booking a sheet as cut comes to; null when it is booked already.
 *
 * @param parts of the plan, for what is cut to be known again once they have changed
 */
export function bookingOf(
	file: JobFile,
	job: Job,
	all: readonly BoardLayouts[],
	which: Which,
	parts: readonly Part[] = [],
): Booking | null {
	const found = findSheet(job, all, which);
	if (found.boards.sources[which.index]?.cut) return null;
	const at = pinnedPlace(file, found, which.index);
	const on = new Set(found.layout.placed.map((p) => p.id));
	const made = parts.filter((p) => on.has(p.id)).map(asCut);
	const pinned = file.pinned ?? [];
	if (pinned[at]?.cut) return null;
	const record = { ...withMarks(pinnedOf(found, true), pinned[at]), made };
	const kept = at >= 0 ? pinned.map((p, i) => (i === at ? record : p)) : [...pinned, record];
	const taking = { takes: takenBy(job, found), yields: yieldsOf(found, takenOffcuts(file)) };
	return {
		takings: [taking],
		remnants: [],
		file: { ...withoutPlaces(file, placesOn(found, which)), pinned: kept },
	};
}

/** What was told of its parts while the sheet was in the saw stays told. */
function withMarks(record: Pinned, before: Pinned | undefined): Pinned {
	const placed = record.placed.map((p, i) => {
		const { spoiled = false, kept = false } = before?.placed[i] ?? {};
		return { ...p, ...(spoiled && { spoiled }), ...(kept && { kept }) };
	});
	return { ...record, placed };
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
	parts: readonly Part[] = [],
): JobFile {
	const booking = bookingOf(file, job, all, which, parts);
	return booking ? bookedIn(booking) : file;
}

/** The places by hand that a sheet which stays as a whole makes needless. */
function placesOn({ boards, layout }: FoundSheet, { index }: Which) {
	const on = boards.sources[index]?.byHand ?? null;
	return { material: boards.material, sheet: layout.sheet, on };
}

/** A laid-out sheet with the labels of its offcuts. */
export interface FoundSheet {
	readonly boards: BoardLayouts;
	readonly layout: SheetLayout;
	readonly labels: readonly string[];
}

export function findSheet(
	job: Job,
	all: readonly BoardLayouts[],
	{ material, index }: Which,
): FoundSheet {
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

/**
 * The place in the file's list of the record of this layout; -1 for none. The file may be newer
 * than the plan, as where others have pinned and let go meanwhile: a record is known by what lies
 * on it, and of several alike the first is that of the first such layout.
 */
export function pinnedPlace(file: JobFile, { boards, layout }: FoundSheet, index: number): number {
	const places = (file.pinned ?? []).flatMap((p, i) => (p.material === boards.material ? [i] : []));
	const mine = lies(madeOf(layout));
	const alike = places.filter((at) => lies(file.pinned?.[at]) === mine);
	const rank = boards.answer.layouts
		.slice(0, index)
		.filter((other) => lies(madeOf(other)) === mine).length;
	const found = alike[rank];
	if (found !== undefined) return found;
	// A record typed by hand may say the same in other units: in the plan's own file pinned layouts
	// come first among their material's, in the order of the file.
	const known = boards.sources.filter((source) => source.pinned).length;
	const isOwnFile = boards.sources[index]?.pinned === true && known === places.length;
	return isOwnFile && alike.length === 0 ? (places[index] ?? -1) : -1;
}

/** What lies where on a sheet, by which it is known again. */
const lies = (made: Partial<Pinned> | undefined): string =>
	JSON.stringify([
		...[made?.sheet, made?.length, made?.width],
		made?.placed?.map(({ id, x, y, length, width, turn }) => [id, x, y, length, width, turn]),
		made?.cuts?.map(({ n, runs, at }) => [n, runs, at]),
	]);

function takenBy(job: Job, { boards, layout }: FoundSheet): TakenStock {
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

function yieldsOf({ boards, layout, labels }: FoundSheet, taken: ReadonlySet<string>): Yielded[] {
	const fallen = layout.offcuts.map((o, i) => ({
		id: nth(labels, i),
		material: boards.material,
		length: toMm(o.length),
		width: toMm(o.width),
	}));
	return fallen.filter((o) => !taken.has(o.id));
}

export function pinnedOf({ boards, layout, labels }: FoundSheet, cut: boolean): Pinned {
	return {
		material: boards.material,
		...madeOf(layout),
		offcuts: layout.offcuts.map((o, i) => ({ ...rect(o), label: nth(labels, i) })),
		cut,
	};
}

/** What is made of a sheet, as its record says it. */
function madeOf(layout: SheetLayout) {
	return {
		sheet: layout.sheet,
		length: toMm(layout.length),
		width: toMm(layout.width),
		placed: layout.placed.map((p) => ({ id: p.id, ...rect(p), turn: p.turn })),
		cuts: layout.cuts.map(cutInMm),
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
