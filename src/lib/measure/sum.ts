import { subtractRatios, addRatios, multiplyRatios, type Ratio } from './ratio';
import { ended, plain, Refusal, skipSpace, take, takeNumber, type Scan } from './scan';

/**
 * The units one kind of quantity may carry, and what one of each is in the unit the reading answers
 * in.
 */
export interface Units {
	/** Spellings in lower case, exactly as written after the number. */
	readonly named: ReadonlyMap<string, Ratio>;
	/** What a bare number means. */
	readonly bare: Ratio;
	/** 'length', for the sentence that refuses. */
	readonly kind: string;
	/** What is right, for the sentence that refuses: '600 mm or 23 5/8 in'. */
	readonly example: string;
	/** A smaller unit that may follow on without a sign, as inches follow feet. */
	readonly follows?: { readonly after: Ratio; readonly small: Ratio };
}

interface Factor {
	readonly value: Ratio;
	/** Size of its unit; null for a bare number. */
	readonly unit: Ratio | null;
}

const LONGEST_TEXT = 120;

/**
 * A small sum of products, each term with its own unit: `360 + 2*17.6`. Throws a {@link Refusal}.
 */
export function readSum(text: string, decimal: '.' | ',', units: Units): Ratio {
	const said = text.trim();
	// One more is looked at than is read: what is too long is refused, not cut off unseen.
	const scan: Scan = { text: plain(said.slice(0, LONGEST_TEXT + 1)), decimal, at: 0 };
	const example = `Write a ${units.kind} such as ${units.example}.`;
	if (scan.text === '') throw new Refusal('Nothing is written here.', example);
	if (Math.max(said.length, scan.text.length) > LONGEST_TEXT) {
		throw new Refusal(`"${scan.text.slice(0, 20)}…" is too long a text to read.`, example);
	}
	const negative = take(scan, /[+-]\s*/y)?.[0].startsWith('-') ?? false;
	const terms: { term: Factor; sign: 1 | -1 }[] = [];
	terms.push({ term: takeTerm(scan, units), sign: negative ? -1 : 1 });
	for (skipSpace(scan); !ended(scan); skipSpace(scan)) {
		const sign = take(scan, /[+-]\s*/y);
		if (!sign) throw stray(scan, units);
		terms.push({ term: takeTerm(scan, units), sign: sign[0].startsWith('-') ? -1 : 1 });
	}
	return total(terms, units);
}

function total(terms: { term: Factor; sign: 1 | -1 }[], units: Units): Ratio {
	const bare = terms.some(({ term }) => term.unit === null);
	const foreign = terms.some(({ term }) => term.unit !== null && !likeBare(term.unit, units));
	if (bare && foreign) {
		throw new Refusal(
			'Some numbers of this sum have a unit and some have none.',
			'Write the unit after every number of the sum.',
		);
	}
	let sum: Ratio = { n: 0n, d: 1n };
	for (const { term, sign } of terms) {
		const value = multiplyRatios(term.value, term.unit ?? units.bare);
		sum = sign > 0 ? addRatios(sum, value) : subtractRatios(sum, value);
	}
	return sum;
}

function takeTerm(scan: Scan, units: Units): Factor {
	let term = takeFactor(scan, units);
	while (take(scan, /\s*(?:\*|x(?![a-z]))\s*/iy)) {
		const next = takeFactor(scan, units);
		if (term.unit && next.unit) {
			throw new Refusal(
				`"${scan.text}" multiplies a ${units.kind} by a ${units.kind}.`,
				`Multiply by a plain number, as in 2 * ${units.example.split(' or ')[0]}.`,
			);
		}
		term = { value: multiplyRatios(term.value, next.value), unit: term.unit ?? next.unit };
	}
	return term;
}

function takeFactor(scan: Scan, units: Units): Factor {
	const value = takeNumber(scan);
	if (!value) throw stray(scan, units);
	const unit = takeUnit(scan, units);
	const { follows } = units;
	if (!follows || !unit || !same(unit, follows.after)) return { value, unit };
	// 2' 3 1/2" and 2'-3 1/2": the hyphen joins feet and inches; a minus between them needs spaces.
	if (!take(scan, /(?:-|\s*)(?=\d|[.,]\d)/y)) return { value, unit };
	const small = takeNumber(scan);
	const smallUnit = takeUnit(scan, units) ?? follows.small;
	if (!small || !same(smallUnit, follows.small)) throw stray(scan, units);
	const smalls = multiplyRatios(value, { n: unit.n * smallUnit.d, d: unit.d * smallUnit.n });
	return { value: addRatios(smalls, small), unit: smallUnit };
}

function takeUnit(scan: Scan, units: Units): Ratio | null {
	const from = scan.at;
	const word = take(scan, /\s*(["'°]|[a-zµ³²]+(?:[ .]*[a-z]+)*\.?[23³²]?)/iy)?.[1];
	if (word === undefined) return null;
	const unit = units.named.get(word.toLowerCase());
	if (unit) return unit;
	scan.at = from;
	if (/^x(?![a-z])/i.test(word)) return null;
	throw new Refusal(
		`"${word}" is not a unit of ${units.kind}.`,
		`Write a ${units.kind} such as ${units.example}.`,
	);
}

function stray(scan: Scan, units: Units): Refusal {
	const rest = scan.text.slice(scan.at, scan.at + 20);
	const where = rest === '' ? 'ends too early' : `cannot be read from "${rest}" on`;
	return new Refusal(`"${scan.text}" ${where}.`, `Write a ${units.kind} such as ${units.example}.`);
}

/** Beside feet a bare number can only be inches, when inches are what a bare number means. */
function likeBare(unit: Ratio, { bare, follows }: Units): boolean {
	if (same(unit, bare)) return true;
	return follows !== undefined && same(bare, follows.small) && same(unit, follows.after);
}

const same = (a: Ratio, b: Ratio): boolean => a.n * b.d === b.n * a.d;
