import { lastOf, nth } from '../../../measure';
import { sameSetting, type Cut } from '../../../nest';
import {
	cutGives,
	cutKind,
	cutSetting,
	type Figures,
	partLabel,
	type SheetAt,
} from '../../wording';
import { type Block, table, widest, type Row } from '../../page';
import type { CutGroup } from './cut-groups';

/** 14 point: read from the fence. */
const FENCE = 4.94;

/** The cuts of one group with boxes to tick, the fence figure as the largest word. */
export function cutList(
	at: SheetAt,
	group: CutGroup,
	strips: ReadonlyMap<number, string>,
	width: number,
	figures: Figures,
): Block[] {
	const trims = group.cuts.filter((cut) => cut.kind === 'trim');
	const cuts = group.cuts.filter((cut) => cut.kind !== 'trim');
	const rows = [
		...(trims.length === 0 ? [] : [skimRow(trims, figures)]),
		...cuts.map((cut, i) => cutRow(at, cut, cuts[i - 1], strips, figures)),
	];
	const fences = cuts.map((c) => (c.kind === 'slant' ? '' : figures.bench(c.fence)));
	const names = [trimName(trims), ...cuts.map(cutName)];
	return table(
		{
			columns: [
				{ head: '', width: 3.6 },
				{ head: 'Cut', width: widest(['Cut', ...names]) },
				{ head: 'Fence', width: widest(['skim', ...fences], FENCE), align: 'end' },
				{ head: 'From', width: 36 },
				{ head: 'Gives', width: { share: 1 } },
			],
			rows,
		},
		width,
	);
}

function cutName(cut: Cut): string {
	return `${cut.n}  ${cutKind(cut)}`;
}

function trimName(trims: readonly Cut[]): string {
	if (trims.length === 0) return '';
	const [first, last] = [nth(trims, 0).n, lastOf(trims).n];
	return first === last ? `${first}  trim` : `${first}–${last}  trim`;
}

function cutRow(
	at: SheetAt,
	cut: Cut,
	before: Cut | undefined,
	strips: ReadonlyMap<number, string>,
	figures: Figures,
): Row {
	const set = cutSetting(at, cut, figures, strips);
	return {
		of: `cut:${cut.n}`,
		cells: [
			{ tick: true },
			cutName(cut),
			set.fence === '' ? '' : { text: set.fence, weight: 'semibold', size: FENCE },
			`${set.from}${standing(at, cut, before)}`,
			cutGives(set),
		],
	};
}

/** Where the fence stands so already, from the cut made before: maybe one of another list. */
function standing(at: SheetAt, cut: Cut, above: Cut | undefined): string {
	const { cuts } = nth(at.boards.answer.layouts, at.index);
	const before = cuts[cuts.findIndex((c) => c.n === cut.n) - 1];
	if (before === undefined || !sameSetting(before, cut)) return '';
	return before.n === above?.n ? ', as it stands' : `, as for cut ${before.n}`;
}

/** Squaring the sheet: a skim off each edge, and what is left. */
function skimRow(trims: readonly Cut[], figures: Figures): Row {
	const off = trims.map((cut) => skimmed(cut, figures));
	const { kept, lost } = lastOf(off);
	const each = off.every((o) => o.lost === lost)
		? `${lost} off ${off.length > 1 ? 'each' : 'it'}`
		: off.map((o) => `${o.lost} off the ${o.edge}`).join(', ');
	return {
		of: `cut:${nth(trims, 0).n}`,
		cells: [
			{ tick: true },
			trimName(trims),
			{ text: 'skim', weight: 'semibold', size: FENCE },
			off.length === 4
				? 'all four edges'
				: `${off.map((o) => o.edge).join(', ')} edge${off.length > 1 ? 's' : ''}`,
			`${each}, blade and all; leaves ${figures.size(kept.length, kept.width)}`,
		],
	};
}

/** The edge that a trim takes something off, how much, and what it leaves. */
function skimmed({ runs, region, gives: [low, high] }: Cut, figures: Figures) {
	const isLow = low.kind === 'waste' || low.kind === 'nothing';
	const kept = (isLow ? high : low).rect;
	if (runs === 'x')
		return { edge: isLow ? 'bottom' : 'top', lost: figures.bench(region.width - kept.width), kept };
	return { edge: isLow ? 'left' : 'right', lost: figures.bench(region.length - kept.length), kept };
}

/**
 * How slanted cuts are laid out, and on which side of its line the blade runs; '' where there are
 * none. A line is the edge of a piece: of the first of two that are kept.
 */
export function slantsText(at: SheetAt, cuts: readonly Cut[]): string {
	const slants = cuts.filter((cut) => cut.kind === 'slant');
	if (slants.length === 0) return '';
	const parting = slants.filter(({ gives }) => gives.every((g) => g.kind !== 'waste'));
	const edges = parting.map(({ n, gives: [first] }) => {
		const of = first.kind === 'piece' ? partLabel(at.plan, first.id ?? '') : 'its first strip';
		return `of cut ${n} it is the edge of ${of}, and the blade runs on the other side`;
	});
	return `${[
		'Slanted cuts: mark both ends on the piece as it lies then, edges named as on its drawing, and strike the line from one to the other',
		'It is the edge of the piece that is kept: the blade runs in the waste (common practice, no source)',
		...edges.map((t) => t.charAt(0).toUpperCase() + t.slice(1)),
	].join('. ')}.`;
}

/** Settings that come back on the sheet, so that a stop can be left or found again. */
export function settingsAgain(cuts: readonly Cut[], figures: Figures): string {
	const bySetting = new Map<string, Cut[]>();
	for (const cut of cuts) {
		if (cut.kind === 'trim' || cut.kind === 'slant') continue;
		const key = `${figures.bench(cut.fence)} from the ${cut.fenceEdge}`;
		bySetting.set(key, [...(bySetting.get(key) ?? []), cut]);
	}
	const again = [...bySetting].filter(([, list]) => list.length > 1);
	if (again.length === 0) return '';
	const said = again.map(([key, list]) => `${key}: cuts ${list.map((c) => c.n).join(', ')}`);
	return `Settings used more than once: ${said.join('; ')}.`;
}
