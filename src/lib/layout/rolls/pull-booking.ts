import { buyLength, type Job, type JobFile, type Roll, rollOf } from '../../job';
import { ticks, toMm } from '../../measure';
import type { Booking } from '../booked';
import type { Blank } from '../../wrap';
import type { RollLayout } from '../layouts';
import { asPulled } from './as-pulled';

/** Which roll of a plan is meant, and the lot that stands on its label. */
export interface Pulling {
	readonly cloth: string;
	readonly layout: RollLayout;
	/** Typed where the rack does not say it; of an owned roll that of the rack. */
	readonly lot: string;
	/** Of the plan, for what is cut to be known again once they have changed. */
	readonly blanks?: readonly Blank[];
}

/**
 * What booking cloth as pulled comes to: the length off the roll, or what is left of a length that
 * was bought, which joins the rack as a remnant where it is worth keeping. Null when it is booked
 * already, or failed its check.
 */
export function pullBooking(file: JobFile, job: Job, pulling: Pulling): Booking | null {
	const { cloth, layout, blanks = [] } = pulling;
	if (layout.pulled || layout.faults.length > 0 || layout.pull <= 0) return null;
	const roll = rollOf(job, layout.roll);
	if (!roll) return null;
	const lot = (layout.owned ? roll.lot : '') || pulling.lot.trim();
	const on = new Set(layout.answer.placed.map((p) => p.id));
	const record = {
		...{ cloth, roll: roll.id, owned: layout.owned, lot },
		usable: toMm(layout.problem.width),
		length: toMm(layout.answer.length),
		pull: toMm(layout.pull),
		...(layout.along ? { along: toMm(layout.along) } : {}),
		...priceIn(file, job, roll),
		made: blanks.filter((b) => on.has(b.id)).map(asPulled),
		placed: layout.answer.placed.map(({ id, turn, ...at }) => ({
			...{ id, turn, x: toMm(at.x), y: toMm(at.y) },
			...{ length: toMm(at.length), width: toMm(at.width) },
		})),
	};
	const booked = { ...file, pulled: [...(file.pulled ?? []), record] };
	if (layout.owned) {
		const takes = { kind: 'roll', id: roll.id, amount: record.pull } as const;
		return { takings: [{ takes, yields: [] }], remnants: [], file: booked };
	}
	return { takings: [], remnants: remnantsOf(file, job, pulling, lot), file: booked };
}

/** The price of a roll as the file says it. */
function priceIn(
	file: JobFile,
	{ shop }: Job,
	{ id, per, step }: Roll,
): Pick<NonNullable<JobFile['pulled']>[number], 'price'> {
	const line = (file.stock?.rolls ?? []).find((r) => r.id === id);
	if (!line?.price) return {};
	const each = per ?? (shop.ruler.unit === 'in' ? 'yard' : 'metre');
	return { price: { price: line.price, per: each, step: toMm(step) } };
}

/** Of cloth that was bought: what is over of the steps that had to be bought. */
function remnantsOf(
	file: JobFile,
	job: Job,
	{ layout }: Pulling,
	lot: string,
): Booking['remnants'] {
	const roll = rollOf(job, layout.roll);
	const [line] = (file.stock?.rolls ?? []).filter(({ id }) => id === layout.roll);
	if (!roll || !line) return [];
	const { count } = buyLength(roll, layout.pull, job.shop.ruler);
	// The cut-off line lies where the blanks end; a pattern's lead goes by before them.
	const used = layout.answer.length + (layout.lead ?? 0);
	const left = ticks(Math.round(count * roll.step - used));
	if (!isWorthKeeping(left, layout.problem.width, job.shop.keep)) return [];
	const remnant = { ...line, id: freshLabel(job), left: toMm(left), lot };
	// What it costs to buy more is no matter of a remnant.
	delete remnant.least;
	delete remnant.breaks;
	return [remnant];
}

/** As an offcut of a board is worth racking: the shop says one size for both. */
function isWorthKeeping(left: number, width: number, keep: Job['shop']['keep']): boolean {
	return (
		Math.max(left, width) >= Math.max(keep.length, keep.width) &&
		Math.min(left, width) >= Math.min(keep.length, keep.width)
	);
}

/** A longer number would fill the label. */
const LONGEST_NUMBER = 12;

/** The label of a remnant: 0142-C1, 0142-C2 ... by the job's number. */
function freshLabel({ number, stock, pulled }: Job): string {
	const by = /^[A-Za-z0-9][A-Za-z0-9._-]*$/.test(number.trim()) ? number.trim() : '';
	const used = new Set([...stock.rolls.map((r) => r.id), ...pulled.map((p) => p.roll)]);
	let n = 0;
	let label: string;
	do label = `${by && by.length <= LONGEST_NUMBER ? `${by}-` : ''}C${++n}`;
	while (used.has(label));
	return label;
}
