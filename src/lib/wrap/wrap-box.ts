import { lastOf, nth, ticks, type Length } from '../measure';
import type { BoxSkin, Need } from '../design';
import { edgeLength, edgesOf } from '../geometry';
import { napOnRoll, type Carpet, type Path, type Problem, type Cloth } from '../job';
import { glueNeed } from './adhesive';
import type { Blank } from './blank';
import {
	bandsOf,
	type Band,
	bandBlank,
	faceBlank,
	type BoxCloth,
	boxFaces,
	type BoxFace,
	type BoxFaces,
	edgeEnd,
	seamed,
	seamSizeProblems,
	type EdgeEnd,
	type SeamSizes,
} from './box';
import { fitToRoll, type RollFit } from './fit-to-roll';
import type { WrapShop } from './shop';

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
 * face. A box that leans both ways has no band. `path`: where in the job the carpet is asked for.
 */
export function wrapBox(
	skin: BoxSkin,
	wish: Carpet,
	cloth: Cloth,
	shop: WrapShop,
	path: Path,
): WrappedBox {
	const faces = boxFaces(skin, wish);
	const of: BoxCloth = { owner: skin.owner, box: skin.name, cloth, ruler: shop.ruler };
	const problems = [
		...unknownFaces(skin, wish, path),
		...seamSizeProblems(skin, wish, shop.ruler, path),
	];
	if (![...faces.round, ...faces.ends].some((f) => f.covered)) return { ways: [], problems };
	const ways: Made[] = [faceByFace(faces, wish, of)];
	if (skin.across !== null) ways.unshift(inABand(faces, skin.across, wish, of));
	const fit = { ...shop, nap: napOnRoll(cloth), column: cloth.repeatAcross, seams: [] };
	return { ways: ways.map((w) => finished(w, skin.name, fit, path)), problems };
}

/** A way before it is looked over. */
interface Made {
	readonly way: BoxWay['way'];
	readonly blanks: readonly Blank[];
	readonly seams: readonly Seam[];
}

/** A seam, and whether it could not be kept off the faces that are looked at. */
interface Seam {
	readonly length: number;
	readonly between: readonly [string, string];
	readonly shown: boolean;
}

function finished(made: Made, box: string, fit: RollFit, path: Path): BoxWay {
	const fitted = made.blanks.map((b) => fitToRoll(b, fit, path));
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

function inABand(faces: BoxFaces, across: number, sizes: SeamSizes, of: BoxCloth): Made {
	const bands = bandsOf(faces, sizes.overlap);
	const seams: Seam[] = [];
	const blanks = bands.map((band, i) => {
		const ends = bandEnds(band, faces, sizes);
		if (band.ring) seams.push(closing(band, across));
		const covers = bands.length > 1 ? `Band ${i + 1}` : 'Band';
		const key = bands.length > 1 ? `band-${i + 1}` : 'band';
		return bandBlank({ band, faces, across }, ends, { key, label: `C${i + 1}`, covers }, of);
	});
	const caps = faces.ends.filter((f) => f.covered);
	const made = caps.map((cap, i) => capBlank(cap, faces, sizes, of, blanks.length + i + 1));
	return {
		way: 'band',
		blanks: [...blanks, ...made.map((m) => m.blank)],
		seams: [...seams, ...made.flatMap((m) => m.seams)],
	};
}

function closing(band: Band, across: number): Seam {
	const name = nth(band.stretches, 0).face.face.name;
	const last = lastOf(band.stretches).face.face.name;
	return { length: across, between: [last, name], shown: band.shown };
}

/** How a band ends along each of its edges, in the order of its outline. */
function bandEnds(band: Band, faces: BoxFaces, sizes: SeamSizes): EdgeEnd[] {
	const end = (key: string) => faces.ends.find((f) => f.face.key === key);
	const side = (key: string) => band.stretches.map((s) => edgeEnd(s.face, end(key), true, sizes));
	const across: EdgeEnd = band.ring
		? { kind: 'butt', reach: sizes.overlap / 2 }
		: { kind: 'turn', reach: sizes.margin };
	return [across, ...side('right'), across, ...side('left').reverse()];
}

function capBlank(
	cap: BoxFace,
	faces: BoxFaces,
	sizes: SeamSizes,
	of: BoxCloth,
	n: number,
): { blank: Blank; seams: readonly Seam[] } {
	const beyond = cap.beside.map((key) => faces.round.find((f) => f.face.key === key));
	const ends = beyond.map((b) => edgeEnd(cap, b, false, sizes));
	const lengths = edgesOf(cap.face.outline).map(edgeLength);
	const joined = beyond.flatMap((b, e) => (b && seamed(nth(ends, e), b) ? [{ b, e }] : []));
	const shown = joined.find(({ e }) => nth(ends, e).kind === 'butt');
	const called = { key: cap.face.key, label: `C${n}`, covers: cap.face.name };
	const blank = faceBlank(cap, ends, called, of);
	const first = shown ?? joined[0];
	if (!first) return { blank, seams: [] };
	const seam: Seam = {
		length: joined.reduce((sum, { e }) => sum + nth(lengths, e), 0),
		between: [cap.face.name, first.b.face.name],
		shown: shown !== undefined,
	};
	return { blank, seams: [seam] };
}

function faceByFace(faces: BoxFaces, sizes: SeamSizes, of: BoxCloth): Made {
	const all = [...faces.round, ...faces.ends];
	const order = (f: BoxFace) => all.indexOf(f);
	const seams: Seam[] = [];
	const covered = all.filter((f) => f.covered);
	const blanks = covered.map((face, i) => {
		const beyond = face.beside.map((key) => all.find((f) => f.face.key === key));
		const ends = beyond.map((b) => edgeEnd(face, b, !b || order(face) < order(b), sizes));
		edgesOf(face.face.outline).forEach((edge, e) => {
			const b = beyond[e];
			if (!b?.covered || order(face) > order(b)) return;
			const between = [face.face.name, b.face.name] as const;
			seams.push({ length: edgeLength(edge), between, shown: nth(ends, e).kind === 'butt' });
		});
		return faceBlank(
			face,
			ends,
			{ key: face.face.key, label: `C${i + 1}`, covers: face.face.name },
			of,
		);
	});
	return { way: 'faces', blanks, seams };
}

function unknownFaces(skin: BoxSkin, wish: Carpet, path: Path): Problem[] {
	const known = [...skin.round, ...skin.ends].map((f) => f.key);
	return (['cover', 'show'] as const).flatMap((field) =>
		wish[field].flatMap((key, i): Problem[] =>
			known.some((k) => k === key)
				? []
				: [
						{
							path: [...path, field, i],
							kind: 'check',
							what: `The carpet names the face '${key}', which ${skin.name} does not have.`,
							fix: `Name one of ${known.join(', ')}.`,
						},
					],
		),
	);
}

/** Seams that could not be kept off the faces that are looked at. */
function exposed(made: Made, path: Path): Problem[] {
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
