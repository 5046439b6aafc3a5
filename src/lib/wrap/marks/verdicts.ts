import { ticks, type Length, showLength, type Ruler, around } from '../../measure';
import type { Covering, ClothStep } from '../../design';
import { arcOfEdge, edgeLength, edgesOf, headingAt } from '../../geometry';
import type { Path, Problem, Cloth } from '../../job';
import type { Verdict } from '../blank';
import { turnTo } from '../girth';

/*
 * Can this cloth take this step? Laid from the higher level down, the cloth that is a circle of
 * radius r + h round an outside corner of radius r has to become a circle of radius r at the foot
 * of a step h high: it must shrink by h / (r + h). At an inside corner the circle of radius r - h
 * has to become one of radius r: it must stretch by h / (r - h). Plain geometry of the circle; what
 * a cloth gives is the shop's own figure.
 */

/** How much of itself the cloth must lose, 0..1, at an outside corner. */
export function shrinkAsked(radius: number, height: number): number {
	return height === 0 ? 0 : height / (radius + height);
}

/**
 * By how much of itself the cloth must grow at an inside corner; Infinity when the corner is
 * tighter than the step is high.
 */
export function stretchAsked(radius: number, height: number): number {
	if (height === 0) return 0;
	return radius > height ? height / (radius - height) : Infinity;
}

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
		return layer ? made.map((v) => ({ ...v, layer: layer.index })) : made;
	});
	const folds = covering.edges.some((e) => e.kind === 'wrapped');
	return folds && cloth.tightest > 0 ? [...steps, edgeVerdict(cloth, ruler)] : steps;
}

/**
 * Steps the cloth does not take: what each asks and gives, and that a relief cut or a wrap of its
 * own is needed.
 */
export function doubtsOf(name: string, verdicts: readonly Verdict[], path: Path): Problem[] {
	return verdicts.flatMap(({ where, layer, doubt }): Problem[] => {
		if (layer === undefined || !doubt) return [];
		const what = `${name}: ${where}. ${doubt.figures}.`;
		const fix = `${doubt.help.charAt(0).toUpperCase()}${doubt.help.slice(1)}.`;
		return [{ path: [...path, 'layers', layer], kind: 'check', what, fix }];
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
		share > 0 && share < 1 && `round them to ${show((height * (1 - share)) / share, ruler)}`,
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
	const asks = Math.min(BEYOND, 100 * stretchAsked(Math.min(...radii), height));
	const gives = Math.min(cloth.stretchAlong, cloth.stretchAcross);
	const share = gives / 100;
	return verdict(`${what}, inside corners`, 'stretch', asks, gives, [
		share > 0 && `round them to ${show((height * (1 + share)) / share, ruler)}`,
		'slit the cloth there',
		'wrap the layer by itself',
	]);
}

function verdict(
	where: string,
	how: 'shrink' | 'stretch',
	asks: number,
	gives: number,
	helps: readonly (string | false)[],
): Verdict {
	const takes = asks <= gives;
	const asked = asks >= BEYOND ? 'more than any cloth gives' : `${percent(asks)} %`;
	const figures = `The cloth must ${how} by ${asked} and gives ${percent(gives)} %`;
	const help = helps.filter((h) => h !== false).join(', or ');
	const base = { where, asks: rounded(asks), gives, takes };
	if (takes) return { ...base, text: `${figures}: it takes it.` };
	return { ...base, text: `${figures}: ${help}.`, doubt: { figures, help } };
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
