import { nth, theOne, ticks, type Length } from '../measure';
import type { BoxSkin, Need } from '../design';
import { type Carpet, clothOnFace, napOnRoll, type Path, type Problem } from '../job';
import { glueNeed } from './adhesive';
import type { Blank } from './blank';
import {
	type BoxCloths,
	boxFaces,
	type BoxMade,
	faceByFace,
	inABand,
	seamSizeProblems,
} from './box';
import { fitToRoll, type Fitted } from './fit-to-roll';
import type { ClothInShop } from './shop';

/** One way to carpet a box. */
export interface BoxWay {
	readonly way: 'band' | 'faces';
	readonly blanks: readonly Blank[];
	readonly seams: number;
	readonly seamLength: Length;
	readonly needs: readonly Need[];
	/** What has to be looked at if the box is carpeted this way. */
	readonly problems: readonly Problem[];
}

export interface WrappedBox {
	readonly ways: readonly BoxWay[];
	readonly problems: readonly Problem[];
}

/**
 * The carpet of a box, both ways: a band that runs round the profile with end caps, and face by
 * face. A box that leans both ways has no band. `cloths`: those it asks for, as far as the rack has
 * them; `path`: where in the job the carpet is asked for.
 */
export function wrapBox(
	skin: BoxSkin,
	wish: Carpet,
	cloths: readonly ClothInShop[],
	path: Path,
): WrappedBox {
	const faces = boxFaces(skin, wish);
	const of = { owner: skin.owner, box: skin.name, cloths };
	const problems = [
		...unknownFaces(skin, wish, path),
		...givenTwice(wish, path),
		...shownBare(skin, wish, path),
		...cloths.slice(0, 1).flatMap((c) => seamSizeProblems(skin, wish, c.shop.ruler, path)),
	];
	const ways: BoxMade[] = [faceByFace(faces, wish, of)];
	if (skin.across !== null) ways.unshift(inABand(faces, skin.across, wish, of));
	const laid = ways.filter((w) => w.blanks.length > 0);
	return { ways: laid.map((w) => finished(w, of, path)), problems };
}

function finished(made: BoxMade, { box, cloths }: BoxCloths, path: Path): BoxWay {
	const fitted = made.blanks.map((b) => onItsRoll(b, cloths, path));
	const blanks = fitted.flatMap((f) => f.blanks);
	const sewn = made.seams.reduce((sum, s) => sum + s.length, 0);
	return {
		way: made.way,
		blanks,
		seams: fitted.reduce((sum, f) => sum + f.seams, made.seams.length),
		seamLength: ticks(fitted.reduce((sum, f) => sum + f.seamLength, Math.round(sewn))),
		needs: [glueNeed(blanks, `the carpet of ${box}`)],
		problems: [...exposed(made, path), ...fitted.flatMap((f) => f.problems)],
	};
}

/** A blank made to fit the rolls of its own cloth. */
function onItsRoll(blank: Blank, cloths: readonly ClothInShop[], path: Path): Fitted {
	const { cloth, shop } = theOne(cloths, (c) => c.cloth.id === blank.cloth);
	const column = cloth.repeatAcross;
	return fitToRoll(blank, { ...shop, nap: napOnRoll(cloth), column, seams: [] }, path);
}

function unknownFaces(skin: BoxSkin, wish: Carpet, path: Path): Problem[] {
	const known = [...skin.round, ...skin.ends].map((f) => f.key);
	const named = [
		...wish.cover.map((key, i) => ({ key, at: ['cover', i] })),
		...wish.other.map(({ face }, i) => ({ key: face, at: ['other', i, 'face'] })),
		...wish.show.map((key, i) => ({ key, at: ['show', i] })),
	];
	return named
		.filter(({ key }) => !known.some((k) => k === key))
		.map(({ key, at }) => ({
			path: [...path, ...at],
			kind: 'check',
			what: `The carpet names the face '${key}', which ${skin.name} does not have.`,
			fix: `Name one of ${known.join(', ')}.`,
		}));
}

/** A face given two cloths of its own: the first one counts. */
function givenTwice({ other }: Carpet, path: Path): Problem[] {
	return other.flatMap(({ face, cloth }, i): Problem[] => {
		const first = other.findIndex((o) => o.face === face);
		if (first === i) return [];
		return [
			{
				path: [...path, 'other', i, 'face'],
				kind: 'check',
				what: `The face '${face}' is given another cloth twice: '${nth(other, first).cloth}', which is planned, and '${cloth}'.`,
				fix: 'Keep one of them.',
			},
		];
	});
}

/** A face that is looked at and left bare: what its neighbours turn under comes on to it. */
function shownBare(skin: BoxSkin, wish: Carpet, path: Path): Problem[] {
	const keys = [...skin.round, ...skin.ends].map((f) => f.key);
	return wish.show.flatMap((key, i): Problem[] => {
		if (clothOnFace(wish, key) !== null || !keys.some((k) => k === key)) return [];
		return [
			{
				path: [...path, 'show', i],
				kind: 'check',
				what: `${key} is to show and gets no cloth: the cloth of the faces round it is turned under on to it, in sight.`,
				fix: 'Cover it, leave it out of the faces that show, or hide the turn-under behind a trim.',
			},
		];
	});
}

/** Seams that could not be kept off the faces that are looked at. */
function exposed(made: BoxMade, path: Path): Problem[] {
	const how = made.way === 'band' ? 'as a band' : 'face by face';
	return made.seams
		.filter((s) => s.shown)
		.map(({ between: [a, b] }) => ({
			path: [...path, 'show'],
			kind: 'check',
			what: `Carpeted ${how}, a seam runs along the edge between ${a} and ${b}, and both are show faces.`,
			fix: 'Leave one of them out of the show faces and the seam moves on to it.',
		}));
}
