import type { Job } from '../job';
import type { Path } from '../problems';
import { refusal, type Fault } from './fault';

interface Marked {
	readonly path: Path;
	readonly id: string;
}

/**
 * Two things under one mark: the first keeps it, the later is left out, as nobody could tell which
 * one is meant. Boxes, panels and listed parts share their marks, since all of them end up on part
 * labels; so do sheets and offcuts on the rack.
 */
export function doubles(job: Job): Fault[] {
	const { stock, shop } = job;
	const marked = (path: readonly string[], things: readonly { readonly id: string }[]): Marked[] =>
		things.map(({ id }, i) => ({ path: [...path, i], id }));
	return [
		[
			...marked(['boxes'], job.boxes),
			...marked(['panels'], job.panels),
			...marked(['parts'], job.parts),
		],
		[...marked(['stock', 'sheets'], stock.sheets), ...marked(['stock', 'offcuts'], stock.offcuts)],
		marked(['runs'], job.runs),
		marked(['options'], job.options),
		marked(['stock', 'materials'], stock.materials),
		marked(['stock', 'cloths'], stock.cloths),
		marked(['stock', 'rolls'], stock.rolls),
		marked(['stock', 'sundries'], stock.sundries),
		marked(['stock', 'suppliers'], stock.suppliers),
		marked(['shop', 'saws'], shop.saws),
	].flatMap(later);
}

function later(things: readonly Marked[]): Fault[] {
	const first = new Map<string, Marked>();
	return things.flatMap((thing): Fault[] => {
		const before = first.get(thing.id);
		if (!before) {
			first.set(thing.id, thing);
			return [];
		}
		return [
			refusal(
				[...thing.path, 'id'],
				`The mark "${thing.id}" is taken already; this one is left out.`,
				'Give each of them a mark of its own.',
			),
		];
	});
}
