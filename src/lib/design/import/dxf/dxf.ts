import { mm, sayLeast, type Ruler } from '../../../measure';
import type { Complaint } from '../../shape';
import {
	check,
	FINE_MM,
	MOST_EDGES,
	nothingRead,
	type DrawingFile,
	type Fineness,
} from '../drawing-file';
import { expanded, type Expanded } from './blocks';
import { numberOf, readGroups, textOf, type DxfEntity } from './groups';

/** Drawing units of the header variable for insertion units, in millimetres. */
const UNITS: Readonly<Record<number, { mm: number; name: string }>> = {
	1: { mm: 25.4, name: 'inches' },
	2: { mm: 304.8, name: 'feet' },
	4: { mm: 1, name: 'millimetres' },
	5: { mm: 10, name: 'centimetres' },
	6: { mm: 1000, name: 'metres' },
	13: { mm: 0.001, name: 'micrometres' },
	14: { mm: 100, name: 'decimetres' },
};

/** Entities and corners looked at, the copies of blocks counted. */
const MOST_LOOKED_AT = 8 * MOST_EDGES;

/** Entities that never are part of an outline, and say nothing by their absence. */
const SILENT = new Set([
	'TEXT',
	'MTEXT',
	'DIMENSION',
	'POINT',
	'HATCH',
	'LEADER',
	'VIEWPORT',
	'ATTDEF',
	'ATTRIB',
]);

/**
 * Reads a drawing exchange file. `fineness`: how closely curves are followed, in its own unit.
 */
export function readDxf(
	text: string,
	layer: string,
	fineness: Fineness,
	ruler: Ruler,
): DrawingFile {
	if (text.includes('\0'))
		return nothingRead(
			'The drawing is stored in binary form.',
			'Save it again as a text (ASCII) DXF.',
		);
	const file = readGroups(text, MOST_EDGES * 2);
	if (!file)
		return nothingRead(
			'This is no DXF drawing: no section starts in it.',
			'Save the outline as a DXF and give that file.',
		);
	if (!file.whole)
		return nothingRead(
			`The drawing holds more than ${MOST_EDGES * 2} entities: too many for the outline of a panel.`,
			'Save the outline alone, or name the layer it is on in a smaller file.',
		);
	const says = UNITS[file.unit] ?? null;
	const fine = fineness(says);
	const all = expanded(file.entities, file.blocks, {
		layer,
		unseen: unseenIn(file.layers),
		fine,
		most: MOST_LOOKED_AT,
	});
	if (!all.whole)
		return nothingRead(
			`With its blocks put in, the drawing comes to more than ${MOST_LOOKED_AT} corners and entities: too many for the outline of a panel.`,
			'Save the outline alone, without the blocks beside it.',
		);
	if (layer !== '' && !all.layers.has(layer.toLowerCase())) return noSuchLayer(layer, all);
	return {
		runs: all.runs,
		says,
		yDown: false,
		hidden: 0,
		complaints: told(all, FINE_MM / fine, ruler),
	};
}

/** Layers of the table that are switched off (a colour below nothing) or frozen. */
function unseenIn(table: readonly DxfEntity[]): Map<string, 'off' | 'frozen'> {
	const unseen = new Map<string, 'off' | 'frozen'>();
	for (const e of table) {
		if (e.type !== 'LAYER') continue;
		const name = textOf(e, 2).toLowerCase();
		if ((numberOf(e, 70) & 1) === 1) unseen.set(name, 'frozen');
		else if (numberOf(e, 62) < 0) unseen.set(name, 'off');
	}
	return unseen;
}

/** Layers named when the one asked for is not there. */
const NAMED = 20;

function noSuchLayer(layer: string, { layers }: Expanded): DrawingFile {
	const names = [...layers.values()].sort().map((name) => `"${name.slice(0, 40)}"`);
	const more = names.length > NAMED ? ` and ${names.length - NAMED} more` : '';
	return nothingRead(
		`The drawing has nothing on a layer "${layer.slice(0, 40)}".`,
		names.length === 0
			? 'It has nothing on any layer: save the outline as a DXF again.'
			: `Its layers are ${names.slice(0, NAMED).join(', ')}${more}: name one of them, or none for all.`,
	);
}

function told(all: Expanded, unitMm: number, ruler: Ruler): Complaint[] {
	const skipped = all.others.filter((type) => !SILENT.has(type));
	return [
		...leftUnseen([...all.unseen].sort()),
		...some(
			all.unclear,
			(n, kinds) => `${count(n, "of the drawing's curves")} could not be followed (${kinds}).`,
			'Save the outline as lines, arcs and polylines.',
		),
		...throughPoints(all, unitMm, ruler),
		...some(
			all.missing,
			(n, names) => `${count(n, 'block')} put in but not held by the file: ${names}.`,
			'Save the drawing with its blocks, or break them up (explode) first.',
		),
		...some(
			all.endless,
			(n, names) =>
				`${count(n, 'block')} left out that would hold itself or lies too deep: ${names}.`,
			'Break the blocks up (explode) and save again.',
		),
		...some(
			skipped,
			(n, kinds) => `${count(n, 'thing')} in the drawing left out that draw no outline: ${kinds}.`,
			'If one of them is the outline, break it up (explode) into lines and arcs and save again.',
		),
	];
}

function leftUnseen(names: readonly string[]): Complaint[] {
	if (names.length === 0) return [];
	const listed = names.slice(0, NAMED).map((name) => `"${name.slice(0, 40)}"`);
	const more = names.length > NAMED ? ` and ${names.length - NAMED} more` : '';
	const what = `Left out, for it is switched off or frozen in the drawing: what lies on ${names.length === 1 ? 'layer' : 'layers'} ${listed.join(', ')}${more}.`;
	return [{ kind: 'note', what, fix: 'Name the layer here to take the outline from it.' }];
}

/** Curves of which the file gives only points: between them the usual ways to draw one differ. */
function throughPoints({ doubts, uncertain }: Expanded, unitMm: number, ruler: Ruler): Complaint[] {
	const most = (list: readonly number[]): string =>
		sayLeast(mm(Math.ceil(list.reduce((a, b) => Math.max(a, b), 0) * unitMm * 100) / 100), ruler);
	const what = 'given only by points they pass through';
	return [
		...(doubts.length > 0
			? [
					check(
						`${count(doubts.length, 'curve')} ${what}: between the points certain to ${most(doubts)}.`,
						'Look at the outline before cutting; saved with control points, arcs or polylines it would be exact.',
					),
				]
			: []),
		...(uncertain.length > 0
			? [
					check(
						`${count(uncertain.length, 'curve')} left out, ${what}: between the points the usual ways to draw one lie up to ${most(uncertain)} apart.`,
						'Save it with its control points, or as arcs and polylines; or give more points on it.',
					),
				]
			: []),
	];
}

const count = (n: number, what: string): string =>
	what.startsWith('of') ? `${n} ${what}` : `${n} ${what}${n === 1 ? '' : 's'}`;

function some(
	list: readonly string[],
	what: (n: number, names: string) => string,
	fix: string,
): Complaint[] {
	if (list.length === 0) return [];
	const names = [...new Set(list)].slice(0, 6).map((name) => name.slice(0, 40));
	return [check(what(list.length, names.join(', ')), fix)];
}
