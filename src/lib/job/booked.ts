import { type AmountField, distanceField, id, name, size } from './fields';
import { field, z } from './zod';

/*
 * Work that is done and booked: what it took is off the rack, and none of it is planned or ordered
 * again. Sheets that are cut stand among the pinned layouts.
 */

const mark = z.string().max(20);

/** What a blank was when its cloth was pulled; the same mark means the same. */
const madeBlank = z.strictObject({
	id: field(z.string().max(200), { label: 'Mark' }),
	outline: field(mark, { label: 'Outline' }),
	reliefs: field(mark, { label: 'Notches and slits' }),
	openings: field(mark, { label: 'Windows and holes' }),
	seams: field(mark, { label: 'Seams' }),
	folds: field(mark, { label: 'Fold lines' }),
});

/** Cloth that was pulled off its roll, with the blanks laid on it. */
export const pulledClothIn = (amount: AmountField) =>
	z.strictObject({
		cloth: field(id, { label: 'Cloth', refersTo: 'cloths' }),
		/** Its mark in the stock; it may be used up and gone. */
		roll: field(id, { label: 'Roll', edit: 'text' }),
		/** Off the rack, or bought for the job. */
		owned: field(z.boolean().default(true), { label: 'Off the rack' }),
		usable: field(size, { label: 'Usable width' }),
		/** What the blanks take of it, and what was pulled. */
		length: field(size, { label: 'Used' }),
		pull: field(size, { label: 'Pulled' }),
		/** Of its blanks, what was cut along their outlines; absent where all were rectangles. */
		along: field(distanceField.optional(), { label: 'Cut along outlines' }),
		lot: field(z.string().max(60).default(''), { label: 'Dye lot' }),
		/** What its roll cost: used to its end, the roll is on no rack to be asked. */
		price: field(
			z
				.strictObject({
					price: field(amount, { label: 'Price' }),
					per: field(z.enum(['metre', 'yard', 'piece']), { label: 'Price is for' }),
					step: field(size, { label: 'Length of a piece' }),
				})
				.optional(),
			{ label: 'Price of its roll' },
		),
		/** Its blanks as they were designed when it was pulled. */
		made: field(z.array(madeBlank).max(2000).default([]), { label: 'As it was cut' }),
		placed: field(
			z
				.array(
					z.strictObject({
						id: field(z.string().max(200), { label: 'Mark' }),
						x: field(distanceField, { label: 'Along the roll' }),
						y: field(distanceField, { label: 'From the edge' }),
						length: field(size, { label: 'Length' }),
						width: field(size, { label: 'Width' }),
						turn: field(z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]), {
							label: 'Turned left',
							unit: '°',
						}),
						/** It was cut and is of no use: the job needs one more of them. */
						spoiled: field(z.boolean().default(false), { label: 'Spoiled: cut again' }),
					}),
				)
				.max(2000),
			{ label: 'Placed' },
		),
	});

/** So much of a sundry as the work took. */
export const usedSundry = z.strictObject({
	sundry: field(id, { label: 'Sundry', edit: 'text' }),
	name,
	/** Packs and shares of them. */
	packs: field(z.number().min(0).max(1e6), { label: 'Packs used' }),
	bought: field(z.number().min(0).max(1e6).default(0), { label: 'Packs bought' }),
	/** What the plan took for it when it was booked: only what comes to that is ordered again. */
	counted: field(z.number().min(0).max(1e6).default(0), { label: 'Packs counted' }),
});

const minutes = z.number().min(0).max(1e6);

/** An operation as it was estimated, and what it took. */
export const tookTime = z.strictObject({
	what: name,
	/** How much of it there was, in its unit. */
	amount: field(z.number().min(0).max(1e9), { label: 'How much' }),
	unit: field(z.string().max(20), { label: 'Unit' }),
	estimated: field(minutes, { label: 'Estimated', unit: 'min' }),
	taken: field(minutes, { label: 'Taken', unit: 'min' }),
});

/** A material as it was estimated, and what it took. */
export const tookMaterial = z.strictObject({
	what: name,
	unit: field(z.string().max(20), { label: 'Unit' }),
	estimated: field(z.number().min(0).max(1e9), { label: 'Estimated' }),
	taken: field(z.number().min(0).max(1e9), { label: 'Taken' }),
});

export type PulledCloth = z.output<ReturnType<typeof pulledClothIn>>;
export type TookTime = z.output<typeof tookTime>;
export type TookMaterial = z.output<typeof tookMaterial>;

/**
 * Packs of a sundry that the plan counted when their use was booked: the work took more or less of
 * them, and it is done.
 */
export const packsDone = (used: readonly z.output<typeof usedSundry>[], id: string): number =>
	used
		.filter((u) => u.sundry === id)
		.reduce((sum, { packs, counted }) => sum + (counted > 0 ? counted : packs), 0);
