import type { JobFile } from '../../src/lib/job/job';
import type { Plan } from '../../src/lib/plan';
import { labelPages } from '../../src/lib/print/lists';
import { plainFiles } from '../../src/lib/print/output-files';
import { printPack, templatePages } from '../../src/lib/print/pack';
import { wordsOn } from './words-on';

/* Everything a plan says, and which units it says it in. */

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
		// A paragraph is several texts: a figure and its unit may stand on two lines.
		...pages.map((p) => ({ where: p.title, text: wordsOn(p.marks).join(' \n') })),
		...lists.map((f) => ({ where: f.name, text: String(f.data) })),
		...plan.problems.map((p) => ({ where: p.path.join('/'), text: `${p.what}\n${p.fix}` })),
	];
}

const METRIC =
	/(?<![\w])(?:mm|cm|dm|m2|m²|m3|m³|mm2|mm²|cm2|cm²|cm³|kg|ml|litres?|millimet\w+|centimet\w+|metres?|kilograms?)(?!\w)|\d\s(?:m|g|L|l)(?![\w/])|(?:m\/s|mm\/N)/g;
const INCHES =
	/(?<!\w)(?:in²|in3|in³|ft|ft2|ft²|ft3|ft³|lb|lbs|inch|inches|feet|yards?)(?!\w)|\d\sin(?![\w-])|\d"/g;

/** What stands round a unit, enough to find it by. */
const ROUND = 60;

export interface Allowed {
	/** What is taken out before anything is looked for. */
	readonly words: RegExp;
	readonly why: string;
}

/** Units of the other country that these texts hold, with the words round them. */
export function strangeUnits(
	all: readonly Said[],
	unit: 'mm' | 'cm' | 'in',
	allowed: readonly Allowed[],
): string[] {
	const strange = unit === 'in' ? METRIC : INCHES;
	return all.flatMap(({ where, text }) => {
		const rest = allowed.reduce((left, a) => left.replace(a.words, '·'), text);
		const found = [
			...rest.matchAll(strange),
			...(unit === 'cm' ? rest.matchAll(/(?<!\w)mm(?!\w)/g) : []),
		];
		return found.map(
			(m) => `${where}: ${rest.slice(Math.max(0, m.index - ROUND), m.index + m[0].length + 20)}`,
		);
	});
}

const OWN_WORDS = ['name', 'note', 'notes', 'number', 'customer', 'vehicle', 'revision'];

/** The job on another ruler, with no unit left in its own words. */
export function onRuler(file: JobFile, unit: 'mm' | 'cm' | 'in'): JobFile {
	const bare = JSON.parse(JSON.stringify(file), (key, value: unknown) =>
		typeof value === 'string' && OWN_WORDS.includes(key)
			? value.replace(/\b(?:mm|cm|m2|in|inch|kg|ft|lb)\b/g, 'units')
			: value,
	) as JobFile;
	return { ...bare, shop: { ...bare.shop, ruler: { unit, fraction: 32, decimal: '.' } } };
}
