import type { Job } from '../job';
import { LABEL_SHEETS, letterPaper } from '../shop';
import { type Path, nearest } from '../problems';
import { doubt, refusal, type Fault } from './fault';

type Shelf = 'materials' | 'cloths';

/** The fields of boxes, panels, parts and stock that name something on the rack. */
const NAMES: Readonly<Record<string, Shelf>> = {
	material: 'materials',
	cloth: 'cloths',
	wallCloth: 'cloths',
};
const WORDS: Readonly<Record<Shelf, string>> = { materials: 'board', cloths: 'cloth' };

/** Marks that name nothing: a part of a board the job does not have, a roll of an unknown cloth. */
export function unknownMarks(job: Job, clothsInFile: readonly string[] = []): Fault[] {
	const known = {
		materials: job.stock.materials.map((m) => m.id),
		cloths: job.stock.cloths.map((c) => c.id),
	};
	const lists: readonly [Path, readonly unknown[]][] = [
		[['boxes'], job.boxes],
		[['panels'], job.panels],
		[['parts'], job.parts],
		[['pinned'], job.pinned],
		[['byHand'], job.byHand],
		[['pulled'], job.pulled],
		[['stock', 'sheets'], job.stock.sheets],
		[['stock', 'offcuts'], job.stock.offcuts],
		[['stock', 'rolls'], job.stock.rolls],
	];
	const named = lists.flatMap(([path, things]) =>
		things.flatMap((thing, i) => marksIn(thing, [...path, i])),
	);
	const faults = named
		.filter(({ shelf, id }) => !known[shelf].includes(id))
		.map(({ path, shelf, id }) => ({
			...unknown(path, WORDS[shelf], id, known[shelf]),
			// A cloth that was left out has been complained of where it stands.
			said: shelf === 'cloths' && clothsInFile.includes(id),
		}));
	return [...faults, ...unknownSaw(job), ...unknownLabels(job), ...unknownSuppliers(job)];
}

function unknownSaw({ shop }: Job): Fault[] {
	const saws = shop.saws.map((s) => s.id);
	if (shop.saw === undefined || saws.includes(shop.saw)) return [];
	return [unknown(['shop', 'saw'], 'saw', shop.saw, saws)];
}

/**
 * Labels printed for another paper would miss their sheet: such a kind is as unknown as one that is
 * not sold.
 */
function unknownLabels({ shop }: Job): Fault[] {
	const { labels, paper } = shop;
	const known = LABEL_SHEETS.filter((s) => s.paper === letterPaper(paper)).map((s) => s.id);
	if (labels === undefined || known.includes(labels)) return [];
	const like = nearest(labels, known);
	return [
		refusal(
			['shop', 'labels'],
			`No label sheet of this paper has the mark "${labels}".`,
			like
				? `Write "${like}", if that is the sheet meant.`
				: `Use one of ${known.join(', ')}, or leave it empty.`,
		),
	];
}

/** Who sells a thing is asked for where it is ordered: the thing itself is planned with. */
function unknownSuppliers({ stock }: Job): Fault[] {
	const known = stock.suppliers.map((s) => s.id);
	return (['sheets', 'rolls', 'sundries'] as const).flatMap((list) =>
		stock[list].flatMap(({ supplier }, i): Fault[] => {
			if (supplier === undefined || known.includes(supplier)) return [];
			const { what, fix } = unknown([], 'supplier', supplier, known).problem;
			return [doubt(['stock', list, i, 'supplier'], `${what} It is ordered from nobody.`, fix)];
		}),
	);
}

interface Mark {
	readonly path: Path;
	readonly shelf: Shelf;
	readonly id: string;
}

/** Every such field of a thing, however deep. */
function marksIn(value: unknown, path: Path): Mark[] {
	if (Array.isArray(value)) return value.flatMap((entry, i) => marksIn(entry, [...path, i]));
	if (typeof value !== 'object' || value === null) return [];
	return Object.entries(value).flatMap(([key, field]) => {
		const shelf = Object.hasOwn(NAMES, key) ? NAMES[key] : undefined;
		if (shelf && typeof field === 'string') return [{ path: [...path, key], shelf, id: field }];
		return marksIn(field, [...path, key]);
	});
}

function unknown(path: Path, word: string, id: string, known: readonly string[]): Fault {
	const like = nearest(id, known);
	const right =
		known.length === 0
			? `Add a ${word} with this mark first.`
			: like
				? `Write "${like}", if that is the ${word} meant.`
				: `Use one of ${known.slice(0, 8).join(', ')}, or add it.`;
	return refusal(path, `No ${word} has the mark "${id}".`, right);
}
