import type { Job } from '../../../job';

/** A field an option may be made of by choosing, and what else it could be. */
export interface OptionChoice {
	/** The way to it, as an option writes it. */
	readonly path: string;
	/** 'Cover panel, cloth'. */
	readonly name: string;
	readonly others: readonly { readonly value: string; readonly label: string }[];
}

/** Other cloth, other board, one more or one fewer of each box and panel. */
export function choicesOf(job: Job): OptionChoice[] {
	const boards = job.stock.materials.map((m) => ({ value: m.id, label: m.name }));
	const cloths = job.stock.cloths.map((c) => ({ value: c.id, label: c.name }));
	const board = (path: string, name: string, now: string): OptionChoice => ({
		path,
		name: `${name}, board`,
		others: boards.filter((b) => b.value !== now),
	});
	const cloth = (path: string, name: string, now: string): OptionChoice => ({
		path,
		name: `${name}, cloth`,
		others: cloths.filter((c) => c.value !== now),
	});
	const many = (path: string, name: string, now: number): OptionChoice => ({
		path,
		name: `${name}, how many`,
		others: [now - 1, now + 1]
			.filter((n) => n > 0)
			.map((n) => ({ value: String(n), label: String(n) })),
	});
	const boxes = job.boxes.flatMap((b) => [
		board(`boxes/${b.id}/material`, b.name, b.material),
		...(b.carpet ? [cloth(`boxes/${b.id}/carpet/cloth`, b.name, b.carpet.cloth)] : []),
		many(`boxes/${b.id}/count`, b.name, b.count),
	]);
	const panels = job.panels.flatMap((p) => [
		board(`panels/${p.id}/material`, p.name, p.material),
		...(p.cloth ? [cloth(`panels/${p.id}/cloth`, p.name, p.cloth)] : []),
		many(`panels/${p.id}/count`, p.name, p.count),
	]);
	return [...boxes, ...panels].filter((choice) => choice.others.length > 0);
}
