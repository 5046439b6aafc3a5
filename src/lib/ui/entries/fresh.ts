import { nth } from '../../measure';
import type { ListOfMarks } from '../../job';
import type { Entry, Group } from './entry';

/** What a new thing may have to name: the first board on the rack, marks already taken. */
export interface About {
	readonly material: string;
	readonly cloth: string;
	readonly saw: string;
	readonly supplier: string;
	/** Marks in use in the list the new thing joins. */
	readonly taken: readonly string[];
	/** 'box', 'layer': what the mark is made of. */
	readonly stem: string;
}

/** Sizes a new thing starts with, mm: something one can see and then overtype. */
const START: Readonly<Record<string, number>> = {
	width: 400,
	height: 350,
	depth: 300,
	length: 600,
	bottom: 320,
	top: 240,
	diameter: 200,
	frame: 230,
	gap: 30,
	stepHeight: 120,
	stepDepth: 120,
	cutHeight: 100,
	cutDepth: 100,
	at: 150,
	kerf: 3.2,
	nominal: 18,
	measured: 17.8,
	loose: 4,
	pressed: 3,
	usable: 1350,
	thickness: 5,
	radius: 20,
	chamfer: 20,
	inside: 15,
	x: 50,
	y: 50,
	wall: 3,
};

const NUMBERS: Readonly<Record<string, number>> = {
	litres: 30,
	seat: 105,
	angle: 10,
	hertz: 35,
	pack: 1,
	edge: 1,
	layers: 1,
};

/** The smallest value of an entry that can be planned: what is required, and nothing else. */
export function fresh(entry: Entry, key: string, about: About): unknown {
	switch (entry.kind) {
		case 'length':
			return START[key] ?? 100;
		case 'number':
			return NUMBERS[key] ?? Math.max(entry.least ?? 0, 0);
		case 'money':
			return 0;
		case 'volume':
			return NUMBERS[key] ?? 1;
		case 'tick':
			return false;
		case 'text':
		case 'note':
			return '';
		case 'mark':
			return freeMark(about);
		case 'choice':
			return entry.options[0]?.value ?? '';
		case 'refers':
			return firstOf(about)[entry.to];
		case 'group':
			return freshGroup(entry, about);
		case 'list':
			return freshList(key, entry.item, entry.least, about);
		case 'boards':
			return {};
		case 'kinds':
			return freshWay(nth(entry.ways, 0), about);
	}
}

const firstOf = (about: About): Readonly<Record<ListOfMarks, string>> => ({
	materials: about.material,
	cloths: about.cloth,
	saws: about.saw,
	suppliers: about.supplier,
	reels: '',
	layers: '',
});

function freshGroup(group: Group, about: About): Record<string, unknown> | unknown[] {
	if (group.fields.every((f) => typeof f.key === 'number')) {
		return group.fields.map((f, i) => (f.entry.kind === 'choice' ? f.entry.options[i]?.value : 0));
	}
	const made: Record<string, unknown> = {};
	for (const { key, entry } of group.fields) {
		if (!entry.optional)
			made[key] = key === 'name' ? freshName(about) : fresh(entry, String(key), about);
	}
	return made;
}

/**
 * The value of a union made to be of this way. What the old value has in common with it is kept.
 */
export function freshWay(
	way: {
		readonly plain: unknown;
		readonly tag: string | null;
		readonly name: string;
		readonly entry: Group | null;
	},
	about: About,
	old: unknown = undefined,
): unknown {
	if (!way.entry) return way.plain;
	const made = freshGroup(way.entry, about) as Record<string, unknown>;
	// A profile may leave its corners out for a drawing; until there is one, a rectangle is
	// something to change.
	const corners = way.entry.fields.find((f) => f.key === 'corners')?.entry;
	if (corners?.kind === 'list' && corners.optional) made.corners = fresh(corners, 'corners', about);
	if (typeof old === 'object' && old !== null) {
		for (const field of way.entry.fields) {
			const was = (old as Readonly<Record<string, unknown>>)[field.key];
			if (was !== undefined && typeof was === typeof made[field.key]) made[field.key] = was;
		}
	}
	// A tracing starts with nothing marked: any corner made up here would look like a true one.
	if (way.name === 'traced') Object.assign(made, { sheet: [], points: [] });
	return way.tag === null ? made : { [way.tag]: way.name, ...made };
}

/** Three corners of a triangle, or as many of anything else as there must be. */
function freshList(key: string, item: Entry, least: number, about: About): unknown[] {
	if (key === 'corners' || key === 'points') return startCorners();
	return Array.from({ length: least }, () => fresh(item, key, about));
}

/** A rectangle to be changed. */
export const startCorners = (): { x: number; y: number }[] => RECTANGLE.map((p) => ({ ...p }));

const RECTANGLE = [
	{ x: 0, y: 0 },
	{ x: 300, y: 0 },
	{ x: 300, y: 200 },
	{ x: 0, y: 200 },
];

/** 'layer-2': the first number not taken. */
export function freeMark({ stem, taken }: Pick<About, 'stem' | 'taken'>): string {
	for (let n = 1; ; n++) {
		const mark = `${stem}-${n}`;
		if (!taken.includes(mark)) return mark;
	}
}

function freshName({ stem, taken }: About): string {
	const n = freeMark({ stem, taken }).slice(stem.length + 1);
	return `${stem.charAt(0).toUpperCase()}${stem.slice(1).replaceAll('-', ' ')} ${n}`;
}
