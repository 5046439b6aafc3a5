import { around, lastOf, nth } from '../../measure';
import { edgeLength, edgesOf } from '../../geometry';
import type { Blank } from '../blank';
import { type Band, bandsOf } from './band';
import { bandBlank, type BoxCloths, faceBlank } from './blanks';
import type { BoxFace, BoxFaces } from './faces';
import { type EdgeEnd, edgeEnd, type ClothSeam, seamed, type SeamSizes } from './seams';

/** A box carpeted in one way, before it is looked over. */
export interface BoxMade {
	readonly way: 'band' | 'faces';
	readonly blanks: readonly Blank[];
	readonly seams: readonly ClothSeam[];
}

/** A band round the profile for each cloth on it, and a cap for each end. `across`: of the box. */
export function inABand(faces: BoxFaces, across: number, sizes: SeamSizes, of: BoxCloths): BoxMade {
	const bands = bandsOf(faces, sizes.overlap);
	const made = bands.map((band, i) => {
		const ends = bandEnds(band, faces, sizes);
		const covers = bandName(band, bands.length > 1 ? i + 1 : null);
		const key = bands.length > 1 ? `band-${i + 1}` : 'band';
		return {
			blanks: bandBlank({ band, faces, across }, ends, { key, label: `C${i + 1}`, covers }, of),
			seams: footSeam(band, { faces, across }, sizes),
		};
	});
	const caps = faces.ends
		.filter((f) => f.cloth)
		.map((cap, i) => capBlank(cap, faces, sizes, of, bands.length + i + 1));
	const all = [...made, ...caps];
	return {
		way: 'band',
		blanks: all.flatMap((m) => m.blanks),
		seams: all.flatMap((m) => m.seams),
	};
}

/** A band over a single face is called by it. */
function bandName({ stretches, ring }: Band, number: number | null): string {
	if (!ring && stretches.length === 1) return nth(stretches, 0).face.face.name;
	return number === null ? 'Band' : `Band ${number}`;
}

/** How a band ends along each of its edges, in the order of its outline. */
function bandEnds(band: Band, faces: BoxFaces, sizes: SeamSizes): EdgeEnd[] {
	const end = (key: string) => faces.ends.find((f) => f.face.key === key);
	const side = (key: string) => band.stretches.map((s) => edgeEnd(s.face, end(key), true, sizes));
	const head = endAcross(band, faces, 1, sizes);
	return [endAcross(band, faces, -1, sizes), ...side('right'), head, ...side('left').reverse()];
}

/** How a band ends across the box: at its foot, `step` -1, or at its head, 1. */
function endAcross(band: Band, { round }: BoxFaces, step: -1 | 1, sizes: SeamSizes): EdgeEnd {
	if (band.ring) return { kind: 'butt', reach: sizes.overlap / 2 };
	const { at, face } = step < 0 ? nth(band.stretches, 0) : lastOf(band.stretches);
	const beyond = around(round, at + step);
	return edgeEnd(face, beyond, at < round.indexOf(beyond), sizes);
}

/**
 * The seam at the foot of a band: where a ring meets itself, or where another cloth ends. That at
 * its head is the foot of the next.
 */
function footSeam(
	band: Band,
	{ faces, across }: { faces: BoxFaces; across: number },
	sizes: SeamSizes,
): ClothSeam[] {
	const { at, face } = nth(band.stretches, 0);
	const before = band.ring ? lastOf(band.stretches).face : around(faces.round, at - 1);
	if (!before.cloth) return [];
	const butt = endAcross(band, faces, -1, sizes).kind === 'butt';
	const between = [before.face.name, face.face.name] as const;
	return [{ length: across, between, shown: band.ring ? band.shown : butt }];
}

function capBlank(
	cap: BoxFace,
	faces: BoxFaces,
	sizes: SeamSizes,
	of: BoxCloths,
	n: number,
): Omit<BoxMade, 'way'> {
	const beyond = cap.beside.map((key) => faces.round.find((f) => f.face.key === key));
	const ends = beyond.map((b) => edgeEnd(cap, b, false, sizes));
	const lengths = edgesOf(cap.face.outline).map(edgeLength);
	const joined = beyond.flatMap((b, e) => (b && seamed(nth(ends, e), b) ? [{ b, e }] : []));
	const shown = joined.find(({ e }) => nth(ends, e).kind === 'butt');
	const called = { key: cap.face.key, label: `C${n}`, covers: cap.face.name };
	const blanks = faceBlank(cap, ends, called, of);
	const first = shown ?? joined[0];
	if (!first) return { blanks, seams: [] };
	const seam: ClothSeam = {
		length: joined.reduce((sum, { e }) => sum + nth(lengths, e), 0),
		between: [cap.face.name, first.b.face.name],
		shown: shown !== undefined,
	};
	return { blanks, seams: [seam] };
}

/** A blank for each face that gets cloth. */
export function faceByFace(faces: BoxFaces, sizes: SeamSizes, of: BoxCloths): BoxMade {
	const all = [...faces.round, ...faces.ends];
	const order = (f: BoxFace) => all.indexOf(f);
	const seams: ClothSeam[] = [];
	const blanks = all
		.filter((f) => f.cloth)
		.flatMap((face, i) => {
			const beyond = face.beside.map((key) => all.find((f) => f.face.key === key));
			const ends = beyond.map((b) => edgeEnd(face, b, !b || order(face) < order(b), sizes));
			edgesOf(face.face.outline).forEach((edge, e) => {
				const b = beyond[e];
				if (!b?.cloth || order(face) > order(b)) return;
				const between = [face.face.name, b.face.name] as const;
				seams.push({ length: edgeLength(edge), between, shown: nth(ends, e).kind === 'butt' });
			});
			const { key, name } = face.face;
			return faceBlank(face, ends, { key, label: `C${i + 1}`, covers: name }, of);
		});
	return { way: 'faces', blanks, seams };
}
