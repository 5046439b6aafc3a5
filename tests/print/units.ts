import type { JobFile } from '../../src/lib/job/job';
import type { Plan } from '../../src/lib/plan';
import { labelPages } from '../../src/lib/print/lists';
import { plainFiles } from '../../src/lib/print/output-files';
import { printPack, templatePages } from '../../src/lib/print/pack';
import { wordsOn } from './words-on';

/* Everything a plan says, and which units it says it in. */

type Unit = 'mm' | 'cm' | 'in';

/** One thing said, and where. */
interface Said {
	readonly where: string;
	readonly text: string;
}

/** The texts of every page and list, and of every problem. */
export function allSaid(plan: Plan): Said[] {
	const pages = [...printPack(plan), ...labelPages(plan), ...templatePages(plan)];
	const lists = [...plainFiles('order', plan), ...plainFiles('cutting-list', plan)];
	return [
		// A sentence is several lines, each a text: a figure and its unit may stand on two of them.
		...pages.map((p) => ({ where: p.title, text: wordsOn(p.marks).join(' \n') })),
		...lists.map((f) => ({ where: f.name, text: String(f.data) })),
		...problemsSaid(plan),
	];
}

export const problemsSaid = ({ problems }: Plan): Said[] =>
	problems.map((p) => ({ where: p.path.join('/'), text: `${p.what}\n${p.fix}` }));

/**
 * Units of length, area, volume, mass and speed by their marks, and those that may be words too.
 */
const MILLIMETRES = /(?<!\w)(?:mm|millimet\w+)(?!\w)/g;
const METRIC =
	/(?<!\w)(?:mm|cm|dm|[mc]?m[23²³]|kg|ml|lit(?:re|er)s?|(?:milli|centi)?met(?:re|er)s?|kilograms?|km\/h|m\/s|mm\/N)(?!\w)|\d (?:m|g|L|l)(?![\w/])/g;
const INCHES =
	/(?<!\w)(?:(?:in|ft|yd)[23²³]|ft|yd|lbs?|ft\/s|mph|inch(?:es)?|feet|yards?|pounds?)(?!\w)|\d\s+in(?![\w-]|\s+all|\s+the)/g;

/** Words of the other country that stay, each with the reason. */
export interface Kept {
	readonly words: RegExp;
	readonly why: string;
}

/** Enough of what stands round a unit to find it by. */
const ROUND = 60;

/** Units strange to a shop that measures in this one, with the words round them. */
export function strangeUnits(all: readonly Said[], unit: Unit, kept: readonly Kept[]): string[] {
	const strange = { mm: [INCHES], cm: [INCHES, MILLIMETRES], in: [METRIC] }[unit];
	return all.flatMap(({ where, text }) => {
		const rest = kept.reduce((left, { words }) => left.replace(words, '·'), text);
		const found = strange.flatMap((words) => [...rest.matchAll(words)]);
		const round = (at: number): string => rest.slice(Math.max(0, at - ROUND), at + ROUND);
		return found.map((m) => `${where}: ${round(m.index).replace(/\s+/g, ' ')}`);
	});
}

/** Fields whose words are the person's own. */
const OWN_WORDS = ['name', 'note', 'notes', 'number', 'customer', 'vehicle', 'revision', 'address'];

/** The job on that ruler, with no unit in its own words. */
export function onRuler(file: JobFile, unit: Unit): JobFile {
	const bare = JSON.parse(JSON.stringify(file), (key, value: unknown) =>
		typeof value === 'string' && OWN_WORDS.includes(key)
			? value.replace(/\b(?:mm|cm|m2|m|in|inch|kg|g|L|ft|lb)\b/g, 'units')
			: value,
	) as JobFile;
	return { ...bare, shop: { ...bare.shop, ruler: { unit, fraction: 32, decimal: '.' } } };
}
