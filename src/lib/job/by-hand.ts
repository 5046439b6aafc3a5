import { field, z } from './zod';
import { distanceField, id } from './fields';
import { sheetMark, turnField } from './pinned';

/** A part laid by hand: it lies there in every plan, and the rest is laid round it. */
export const handPlace = z.strictObject({
	material: field(id, { label: 'Board', refersTo: 'materials' }),
	sheet: field(sheetMark, {
		label: 'Sheet',
		help: 'Where the sheet comes from and its mark: buy/ply-18.',
	}),
	/** Places with the same sheet and number lie on one sheet. */
	on: field(z.number().int().min(0).max(999).default(0), {
		label: 'Which of those sheets',
		help: 'Parts with the same number lie on one sheet.',
	}),
	part: field(z.string().max(200), { label: 'Part' }),
	x: field(distanceField, { label: 'From the left' }),
	y: field(distanceField, { label: 'From the bottom' }),
	turn: field(turnField.default(0), { label: 'Turned left', unit: '°' }),
});

export type HandPlace = z.output<typeof handPlace>;
