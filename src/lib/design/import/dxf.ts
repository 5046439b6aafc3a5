import type { Run } from '../../geometry/chain';
import type { Complaint } from '../panel/drawn';
import { check, FINE_MM, MOST_EDGES, nothingRead, type DrawingFile } from './drawing-file';
import { gathered, runOf } from './dxf-entities';
import { readGroups, textOf, numberOf, type DxfEntity } from './dxf-groups';

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

/** Reads a drawing exchange file. `unitMm`: the unit the person states, which decides how closely curves are followed. */
export function readDxf(text: string, layer: string, unitMm: number): DrawingFile {
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
	const wanted = gathered(file.entities).filter((e) => onLayer(e, layer));
	const runs: Run[] = [];
	const unclear: string[] = [];
	const skipped: string[] = [];
	for (const e of wanted) {
		const run = runOf(e, FINE_MM / unitMm);
		if (run === 'unclear') unclear.push(e.type);
		else if (run) runs.push(run);
		else if (!SILENT.has(e.type)) skipped.push(e.type);
	}
	return { runs, says: UNITS[file.unit] ?? null, complaints: told(unclear, skipped) };
}

function onLayer(e: DxfEntity, layer: string): boolean {
	const paper = numberOf(e, 67) === 1;
	return !paper && (layer === '' || textOf(e, 8).toLowerCase() === layer.toLowerCase());
}

function told(unclear: readonly string[], skipped: readonly string[]): Complaint[] {
	const kinds = (list: readonly string[]): string => [...new Set(list)].slice(0, 6).join(', ');
	return [
		...(unclear.length > 0
			? [
					check(
						`${unclear.length} of the drawing's curves could not be followed (${kinds(unclear)}).`,
						'Save the outline as lines, arcs and polylines.',
					),
				]
			: []),
		...(skipped.length > 0
			? [
					check(
						`${skipped.length} things in the drawing are no outlines and were left out (${kinds(skipped)}).`,
						'If the outline is inside a block, break it up (explode) and save again.',
					),
				]
			: []),
	];
}
