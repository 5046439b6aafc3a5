import { ticks, type Length, showLength, type Ruler, around } from '../../measure';
import type { Covering, ClothStep } from '../../design';
import { arcOfEdge, edgeLength, edgesOf, headingAt } from '../../geometry';
import type { Path, Problem, Cloth } from '../../job';
import type { Doubt, Verdict } from '../blank';
import { turnTo } from '../girth';
import { type Give, insideRadius, outsideRadius, shrinkAsked, stretchAsked } from '../reliefs';

/* Can this cloth take this step? */

/**
 * From this angle on a corner is a corner; a slighter one is part of a curve drawn with short
 * edges.
 */
const SHARP = (20 * Math.PI) / 180;
/** What is shown for a corner no stretch can follow, per cent. */
const BEYOND = 999;

export function verdictsOf(
	covering: Pick<Covering, 'steps' | 'edges'>,
	cloth: Cloth,
	ruler: Ruler,
): Verdict[] {
	const steps = covering.steps.flatMap((s, i) => {
		const made = stepVerdicts(s, s.layer?.name ?? `Layer ${i + 1}`, cloth, ruler);
		const { layer } = s;
		return made.map((v) => (layer ? doubtAt(v, ['layers', layer.index]) : withoutDoubt(v)));
	});
	const folds = covering.edges.some((e) => e.kind === 'wrapped');
	return folds && cloth.tightest > 0 ? [...steps, edgeVerdict(cloth, ruler)] : steps;
}

/** Which part of the panel would have to change. */
function doubtAt(v: Verdict, at: Doubt['at']): Verdict {
	return v.doubt ? { ...v, doubt: { ...v.doubt, at } } : v;
}

/** A step of no layer cannot be put right in the job. */
export const withoutDoubt = (v: Verdict): Verdict => {
	const { where, asks, gives, takes, text } = v;
	return { where, asks, gives, takes, text };
};

/**
 * Places the cloth does not take: what each asks and gives, and that a relief cut, a wrap of its
 * own or a patch is needed.
 */
export function doubtsOf(name: string, verdicts: readonly Verdict[], path: Path): Problem[] {
	return verdicts.flatMap(({ where, doubt }): Problem[] => {
		if (!doubt) return [];
		const what = `${name}: ${where}. ${doubt.figures}.`;
		const fix = `${doubt.help.charAt(0).toUpperCase()}${doubt.help.slice(1)}.`;
		return [{ path: [...path, ...doubt.at], kind: doubt.kind, what, fix }];
	});
}

function stepVerdicts(step: ClothStep, what: string, cloth: Cloth, ruler: Ruler): Verdict[] {
	const radii = cornerRadii(step);
	const outside = step.raised ? radii.bulging : radii.hollow;
	const inside = step.raised ? radii.hollow : radii.bulging;
	const verdicts: Verdict[] = [];
	if (outside.length > 0) verdicts.push(outsideVerdict(step.height, outside, what, cloth, ruler));
	if (inside.length > 0) verdicts.push(insideVerdict(step.height, inside, what, cloth, ruler));
	return verdicts;
}

/** Radii of the corners of a step's outline, in ticks, 0 where it is sharp. */
function cornerRadii(step: ClothStep): { bulging: number[]; hollow: number[] } {
	const edges = edgesOf(step.outline);
	const bulging: number[] = [];
	const hollow: number[] = [];
	edges.forEach((edge, i) => {
		const arc = arcOfEdge(edge);
		if (arc) (arc.sweep > 0 ? bulging : hollow).push(arc.radius);
		const before = around(edges, i + edges.length - 1);
		const turn = turnTo(headingAt(before, 1), headingAt(edge, 0));
		const radius = bendRadius(turn, edgeLength(before), edgeLength(edge));
		if (radius !== null) (turn > 0 ? bulging : hollow).push(radius);
	});
	return { bulging, hollow };
}

/**
 * Radius of a corner: 0 when sharp, that of the curve when its edges are short chords, null when
 * there is no bend.
 */
function bendRadius(turn: number, before: number, after: number): number | null {
	const bend = Math.abs(turn);
	if (bend >= SHARP) return 0;
	return bend < 1e-3 ? null : Math.min(before, after) / bend;
}

/** A cloth that gives less, a tenth of a hundredth, gives nothing: no radius would help it. */
export const LEAST_GIVE = 0.001;

function outsideVerdict(
	height: Length,
	radii: readonly number[],
	what: string,
	cloth: Cloth,
	ruler: Ruler,
): Verdict {
	const asks = 100 * shrinkAsked(Math.min(...radii), height);
	const gives = cloth.shrink;
	const share = gives / 100;
	return verdict(`${what}, outside corners`, 'shrink', asks, gives, [
		share >= LEAST_GIVE &&
			share < 1 &&
			`round them to ${show(outsideRadius(height, share), ruler)}`,
		'cut a relief there',
		'wrap the layer by itself',
	]);
}

function insideVerdict(
	height: Length,
	radii: readonly number[],
	what: string,
	cloth: Cloth,
	ruler: Ruler,
): Verdict {
	const asks = 100 * stretchAsked(Math.min(...radii), height);
	const gives = 100 * givesOf(cloth).stretch;
	const share = gives / 100;
	return verdict(`${what}, inside corners`, 'stretch', asks, gives, [
		share >= LEAST_GIVE && `round them to ${show(insideRadius(height, share), ruler)}`,
		'slit the cloth there',
		'wrap the layer by itself',
	]);
}

/** The cloth is slit and folded whichever way it lies: the lesser of its two stretches counts. */
export function givesOf(cloth: Cloth): Give {
	const stretch = Math.min(cloth.stretchAlong, cloth.stretchAcross) / 100;
	return { stretch, shrink: cloth.shrink / 100 };
}

export function verdict(
	where: string,
	how: 'shrink' | 'stretch',
	strain: number,
	gives: number,
	helps: readonly (string | false)[],
): Verdict {
	const asks = Math.min(BEYOND, strain);
	const takes = strain <= gives;
	const asked = asks >= BEYOND ? 'more than any cloth gives' : `${percent(asks)} %`;
	const figures = `The cloth must ${how} by ${asked} and gives ${percent(gives)} %`;
	const help = helps.filter((h) => h !== false).join(', or ');
	const base = { where, asks: rounded(asks), gives, takes };
	if (takes) return { ...base, text: `${figures}: it takes it.` };
	const doubt: Doubt = { figures, help, at: [], kind: 'check' };
	return { ...base, text: `${figures}: ${help}.`, doubt };
}

/**
 * Folded round an edge of radius r the face of a cloth t thick grows by t / (2 r + t) against its
 * middle; over a sharp right angle its face gets longer by a quarter circle of radius t.
 */
function edgeVerdict(cloth: Cloth, ruler: Ruler): Verdict {
	const asks = 100;
	const gives = (100 * cloth.pressed) / (2 * cloth.tightest + cloth.pressed);
	const text =
		`The cloth goes round nothing tighter than ${show(cloth.tightest, ruler)}: round the front edges over to that radius. ` +
		`Over a sharp edge its face would have to grow by ${about((Math.PI / 2) * cloth.pressed, ruler)}.`;
	return { where: 'Front edges, left sharp', asks, gives: rounded(gives), takes: false, text };
}

const rounded = (n: number): number => Math.round(n * 10) / 10;
const percent = (n: number): string => String(rounded(n));
/** A figure to keep to is rounded up to a tenth of a millimetre, one to know by to the nearest. */
const show = (l: number, ruler: Ruler): string =>
	showLength(ticks(Math.ceil(l / 160) * 160), ruler);
const about = (l: number, ruler: Ruler): string =>
	showLength(ticks(Math.round(l / 160) * 160), ruler);
