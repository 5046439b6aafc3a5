import { lastOf, nth, type Length, type Ruler, showLength, snap } from '../../measure';
import type { Covering } from '../../design';
import type { Cloth } from '../../job';
import type { Doubt, Verdict } from '../blank';
import { type Flap, STILL } from '../girth';
import { type InsideCorner, insideCorners, insideRadius, stretchAsked } from '../reliefs';
import type { ClothShape } from './cloth-shape';
import { givesOf, LEAST_GIVE, verdict, withoutDoubt } from './verdicts';

/*
 * Inside corners of edges that are turned under: of the outline, where it has a notch, and of every
 * window. Turned down over an edge h high round a corner of radius r the cloth has to stretch by
 * h / (r - h); slit instead, its flaps open over the edge and show the board.
 */

/** An inside corner the cloth does not follow. */
export interface OpenCorner extends InsideCorner {
	/** 'inside corner between edges 3 and 4'. */
	readonly name: string;
}

/** One edge line of a covering, and how the person knows it. */
interface EdgeLine {
	readonly flaps: readonly Flap[];
	/** Null for the outline. */
	readonly name: string | null;
	/** Where in the panel the corner would be changed. */
	readonly about: readonly (string | number)[];
}

function edgeLines(covering: Covering, shape: ClothShape): EdgeLine[] {
	return [
		{ flaps: shape.flaps, name: null, about: [] },
		...shape.windows.map(({ flaps }, i): EdgeLine => {
			const { name = 'Window', index = -1 } = covering.windows[i] ?? {};
			return { flaps, name, about: index < 0 ? [] : ['windows', index] };
		}),
	];
}

/** The corners the cloth cannot stretch round, those of the outline first. */
export function openCorners(covering: Covering, shape: ClothShape, cloth: Cloth): OpenCorner[] {
	return edgeLines(covering, shape).flatMap(({ flaps, name }) =>
		cornersOf(flaps, cloth)
			.filter((c) => !follows(c, cloth))
			.map((c) => ({
				...c,
				name: `inside corner ${name === null ? placeOf(c) : `of ${name}`}`,
			})),
	);
}

/**
 * A verdict for each radius and height of the outline, whose corners are told by place; one for
 * each window or inner edge, whose corners are told by their radii. Those the cloth follows are
 * told as one.
 */
export function cornerVerdicts(
	covering: Covering,
	shape: ClothShape,
	cloth: Cloth,
	ruler: Ruler,
): Verdict[] {
	return edgeLines(covering, shape).flatMap((line) => {
		const corners = cornersOf(line.flaps, cloth);
		const groups = new Map<string, InsideCorner[]>();
		for (const c of corners) {
			const alike = line.name === null ? snap(c.radius) : leavesBare(c);
			const key = follows(c, cloth) ? '' : `${alike} ${c.height}`;
			groups.set(key, [...(groups.get(key) ?? []), c]);
		}
		return [...groups].map(([key, alike]) =>
			key === '' ? followed(line, alike, cloth) : notFollowed(covering, line, alike, cloth, ruler),
		);
	});
}

const cornersOf = (flaps: readonly Flap[], cloth: Cloth): InsideCorner[] =>
	insideCorners(flaps, STILL, cloth.standOff);

const asked = (c: InsideCorner): number => stretchAsked(c.radius, c.height);
const follows = (c: InsideCorner, cloth: Cloth): boolean => asked(c) <= givesOf(cloth).stretch;

function followed(line: EdgeLine, corners: readonly InsideCorner[], cloth: Cloth): Verdict {
	const worst = corners.reduce((a, b) => (asked(b) > asked(a) ? b : a));
	const where = `${line.name ?? 'Edges'}, inside corners`;
	return verdict(where, 'stretch', 100 * asked(worst), 100 * givesOf(cloth).stretch, []);
}

function notFollowed(
	covering: Covering,
	line: EdgeLine,
	alike: readonly InsideCorner[],
	cloth: Cloth,
	ruler: Ruler,
): Verdict {
	const tightest = alike.reduce((a, b) => (b.radius < a.radius ? b : a));
	const { stretch } = givesOf(cloth);
	const say = (n: number): string => showLength(tenths(n), ruler);
	const radii = radiiOf(alike, ruler);
	const places = line.name === null ? ` ${placesOf(alike)}` : '';
	const where = `${line.name ?? 'Edges'}, inside ${alike.length === 1 ? 'corner' : 'corners'}${places}, ${radii.said}`;
	const { height } = tightest;
	const upTo = radii.several ? 'up to ' : '';
	const open = `${upTo}${say(Math.max(...alike.map(openingOf)))}`;
	const bare = leavesBare(tightest)
		? `slit there, the edge shows bare board ${say(height)} high and ${open} wide at its foot`
		: `slit there, its cuts open by ${open} in all at the foot of the edge, ${say(height)} high`;
	const patched = covering.insideCorners === 'patched';
	const helps = [
		stretch >= LEAST_GIVE && `round the board there to ${say(insideRadius(height, stretch))}`,
		patched ? 'use the corner patch planned for it' : 'ask for corner patches',
		'leave the edge bare',
	];
	const single = verdict(where, 'stretch', 100 * asked(tightest), 100 * stretch, helps);
	const made = radii.several ? atTheTightest(single) : single;
	const told = { ...made, text: `${made.text} ${bare.charAt(0).toUpperCase()}${bare.slice(1)}.` };
	if (!told.doubt) return told;
	if (patched) return withoutDoubt(told);
	const doubt: Doubt = {
		...told.doubt,
		figures: `${told.doubt.figures}; ${bare}`,
		at: line.about,
		// Slits that each open a little are usual in a rounded corner; a bare triangle is not.
		kind: leavesBare(tightest) ? 'check' : 'note',
	};
	return { ...told, doubt };
}

/** Slit there, a bare triangle shows: the curve is tighter than the edge is high. */
const leavesBare = (c: InsideCorner): boolean => c.radius <= c.height;

/** Radii as they are told: 'sharp', 'radius 20 mm', 'radii 19.1 mm and 23.7 mm'. */
function radiiOf(
	corners: readonly InsideCorner[],
	ruler: Ruler,
): { said: string; several: boolean } {
	const all = [...new Set(corners.map((c) => tenths(c.radius)))].sort((a, b) => a - b);
	const round = all.filter((r) => r > 0).map((r) => showLength(r, ruler));
	const named = round.length > 1 ? `radii ${inWords(round)}` : `radius ${round.join('')}`;
	const sharp = all[0] === 0;
	const said = round.length === 0 ? 'sharp' : sharp ? `sharp and of ${named}` : named;
	return { said, several: all.length > 1 };
}

/** Each by itself, or where they are many, from the tightest to the widest. */
const inWords = (words: readonly string[]): string =>
	words.length > MOST_RADII ? `from ${nth(words, 0)} to ${lastOf(words)}` : listed(words);
const MOST_RADII = 6;
const listed = (words: readonly string[]): string =>
	`${words.slice(0, -1).join(', ')} and ${lastOf(words)}`;

/** What is said of corners of several radii holds for the tightest of them. */
function atTheTightest(v: Verdict): Verdict {
	const said = (text: string): string =>
		`At the tightest ${text.charAt(0).toLowerCase()}${text.slice(1)}`;
	const { doubt } = v;
	return {
		...v,
		text: said(v.text),
		...(doubt ? { doubt: { ...doubt, figures: said(doubt.figures) } } : {}),
	};
}

/**
 * How wide the flaps stand apart at the foot of an edge: each straight one ends where it meets its
 * neighbour in the flat, and a curve has lost what the edge is high.
 */
export function openingOf({ radius, turn, height, length }: InsideCorner): number {
	if (radius >= height) return turn * height;
	return length + 2 * shortfall({ radius, turn, height });
}

/** How far the flap of one straight edge falls short of where the corner begins, at the foot. */
export function shortfall(c: Pick<InsideCorner, 'radius' | 'turn' | 'height'>): number {
	// Round more than half a circle no two straight edges meet.
	if (c.turn >= Math.PI) return 0;
	return Math.max(0, c.height - c.radius) * Math.tan(Math.min(c.turn, WIDEST) / 2);
}

/** The sharpest corner a patch is made for; a needle is patched like one of 30 degrees. */
const WIDEST = (150 * Math.PI) / 180;

/** 'between edges 3 and 4', or 'along edge 5' where one edge curves. */
function placeOf(c: InsideCorner): string {
	const numbers = [...new Set(c.flaps.flatMap((f) => f.span.cloth.numbers ?? []))];
	const [first, ...others] = numbers.sort((a, b) => a - b);
	const last = others.at(-1);
	if (first === undefined) return 'of the outline';
	return last === undefined ? `along edge ${first}` : `between edges ${first} and ${last}`;
}

const MOST_NAMED = 4;

function placesOf(corners: readonly InsideCorner[]): string {
	const names = [...new Set(corners.map(placeOf))].sort();
	const more = names.length - MOST_NAMED;
	return [...names.slice(0, MOST_NAMED), ...(more > 0 ? [`${more} more`] : [])].join(', ');
}

/** Up to a tenth of a millimetre, as a figure to keep to. */
const tenths = (n: number): Length => snap(Math.ceil(n / 160 - 1e-6) * 160);
