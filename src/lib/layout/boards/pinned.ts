import type { Part } from '../../design';
import type { Job, PinnedLayout } from '../../job';
import { withPinned, type Piece, type Placed, type Sheet, type SheetLayout } from '../../nest';
import { changedSince } from './as-cut';

/*
 * Pinned layouts were printed or cut: they stay as they are, and only the rest is planned. Their
 * parts are taken off the demand and their sheets off the stock; what they leave over is stock for
 * the rest, under the labels printed on it.
 */

/** A pinned layout of the job as the nest sees it. */
export interface Kept {
	readonly pinned: PinnedLayout;
	readonly layout: SheetLayout;
}

/** What is left to lay out once the pinned layouts of one material have had their share. */
export interface Remaining {
	readonly pieces: readonly Piece[];
	readonly sheets: readonly Sheet[];
	readonly kept: readonly Kept[];
}

export function afterPinned(
	job: Job,
	material: string,
	{ pieces, sheets }: Pick<Remaining, 'pieces' | 'sheets'>,
	parts: readonly Part[],
): Remaining {
	const kept = numbered(job.pinned.filter((p) => p.material === material));
	const open = kept.filter((k) => !k.pinned.cut).map((k) => ({ ...k, layout: withoutSpoiled(k) }));
	const labelOf = new Map(open.map((k) => [k.layout, k.pinned.offcuts]));
	const printed = open.map((k) => k.layout);
	const made = kept.filter((k) => k.pinned.cut).map((k) => bare(k, parts));
	const name = (l: SheetLayout, i: number) => `offcut/${labelOf.get(l)?.[i]?.label}`;
	const printedOff = withPinned({ pieces, sheets }, printed, name);
	// Cut sheets have left the rack and their offcuts are on it already: only their parts still
	// count.
	const rest = withPinned(printedOff, made);
	const used = new Set(kept.map((k) => k.layout.sheet).filter((id) => id.startsWith('offcut/')));
	return {
		pieces: rest.pieces.filter((p) => p.count > 0),
		// An offcut of a printed sheet that another pinned layout lies on is spoken for.
		sheets: rest.sheets.filter((s) => s.count !== 0 && !(spare(s, sheets) && used.has(s.id))),
		kept,
	};
}

/** Is this sheet the offcut of a pinned layout, not one of the rack? */
function spare(sheet: Sheet, rack: readonly Sheet[]): boolean {
	return !rack.some((s) => s.id === sheet.id);
}

/** Of a sheet in the saw what was spoiled is to be cut from elsewhere. */
const withoutSpoiled = ({ layout, pinned }: Kept): SheetLayout => {
	const spoiled = spoiledOf(pinned);
	return { ...layout, placed: layout.placed.filter((_, i) => !spoiled.includes(i)) };
};

/** Of a sheet that is cut only the parts count that are of use. */
function bare({ layout, pinned }: Kept, parts: readonly Part[]): SheetLayout {
	const wrong = new Set([...spoiledOf(pinned), ...misfitsOf(pinned, parts)]);
	const placed = layout.placed.filter((_, i) => !wrong.has(i));
	return { ...layout, placed, sheet: '', offcuts: [] };
}

/** Places of the parts that were spoiled. */
export const spoiledOf = ({ placed }: PinnedLayout): number[] =>
	placed.flatMap((p, i) => (p.spoiled ? [i] : []));

/** Places of those that are of another design now, and were not spoiled. */
export const misfitsOf = (pinned: PinnedLayout, parts: readonly Part[]): number[] =>
	pinned.placed.flatMap((p, i) => {
		const part = parts.find(({ id }) => id === p.id);
		const isOther = part !== undefined && changedSince(part, pinned, p)?.length !== 0;
		return pinned.cut && !p.spoiled && isOther ? [i] : [];
	});

/** Copies of a part and of a sheet are numbered from 0 over all pinned layouts together. */
function numbered(pinned: readonly PinnedLayout[]): Kept[] {
	const next = new Map<string, number>();
	const copy = (id: string): number => {
		const n = next.get(id) ?? 0;
		next.set(id, n + 1);
		return n;
	};
	return pinned.map((p) => ({
		pinned: p,
		layout: {
			sheet: p.sheet,
			copy: copy(`sheet ${p.sheet}`),
			length: p.length,
			width: p.width,
			placed: p.placed.map(({ spoiled: _, kept: __, ...placed }): Placed => ({
				...placed,
				copy: copy(`part ${placed.id}`),
			})),
			cuts: p.cuts,
			offcuts: p.offcuts.map(({ x, y, length, width }) => ({ x, y, length, width })),
		},
	}));
}
