import type { ClothEdge, Covering } from '../../design';
import { flatten, type Outline, setIn } from '../../geometry';
import type { ClothInShop } from '../shop';
import { nth } from '../../measure';
import type { Blank, BlankMark } from '../blank';
import { bandExtra, levels, type Band, type BandSide } from './band';
import type { BoxFace, BoxFaces } from './faces';
import { clothEdgeOf, type EdgeEnd } from './seams';
import { coveringBlank, NO_EXTRA, type Extra } from '../marks';
import { CHORD_ERROR } from '../girth';

/** What all blanks of one box have in common. */
export interface BoxCloths {
	readonly owner: string;
	readonly box: string; // its name
	/** Those it asks for, as far as the rack has them. */
	readonly cloths: readonly ClothInShop[];
}

/** The same for one blank. */
interface BoxCloth extends ClothInShop {
	readonly owner: string;
	readonly box: string;
}

/** Null for a cloth the rack does not hold: that has been said where it was read. */
function inCloth({ cloths: known, ...of }: BoxCloths, face: BoxFace): BoxCloth | null {
	const found = known.find((c) => c.cloth.id === face.cloth);
	return found ? { ...of, ...found } : null;
}

/** How a blank is called: 'band', 'left' ... and its number among the blanks of the box. */
export interface BlankName {
	readonly key: string;
	readonly label: string;
	readonly covers: string;
}

/**
 * The cloth of one face, none where the rack does not hold it. `ends`: how it ends at each edge of
 * the outline.
 */
export function faceBlank(
	face: BoxFace,
	ends: readonly EdgeEnd[],
	called: BlankName,
	among: BoxCloths,
): Blank[] {
	const of = inCloth(among, face);
	const extra = { ...NO_EXTRA, holes: face.face.holes };
	const surface = { outline: face.face.outline, ends, nap: face.nap, extra };
	return of ? [blankOf(surface, called, of)] : [];
}

/**
 * The cloth of a band, none where the rack does not hold it: its faces on top of each other, `ends`
 * for each of its edges as {@link bandOutline} lists them.
 */
export function bandBlank(
	{ band, faces, across }: { band: Band; faces: BoxFaces; across: number },
	ends: readonly EdgeEnd[],
	called: BlankName,
	among: BoxCloths,
): Blank[] {
	const of = inCloth(among, nth(band.stretches, 0).face);
	if (!of) return [];
	const extra = bandExtra(
		band,
		faces,
		across,
		sidesOf(band, across, ends),
		of.cloth.relief * of.cloth.pressed,
	);
	return [blankOf({ outline: bandOutline(band, across), ends, nap: -90, extra }, called, of)];
}

/**
 * A band as an outline: its lower edge, up the right side stretch by stretch, its upper edge, down
 * the left side.
 */
function bandOutline(band: Band, across: number): Outline {
	const ys = levels(band);
	const up = ys.map((y) => ({ x: across, y }));
	const down = [...ys].reverse().map((y) => ({ x: 0, y }));
	return [...down.slice(-1), ...up, ...down.slice(0, -1)];
}

function sidesOf(band: Band, across: number, ends: readonly EdgeEnd[]): BandSide[] {
	const n = band.stretches.length;
	const turned = (e: EdgeEnd | undefined) => (e?.kind === 'turn' ? e.reach : null);
	return [
		{ x: across, up: true, reach: band.stretches.map((_, k) => turned(ends[1 + k])) },
		{ x: 0, up: false, reach: band.stretches.map((_, k) => turned(ends[2 * n + 1 - k])) },
	];
}

/** A surface to be covered, and how its cloth ends at each edge of the outline. */
interface Surface {
	readonly outline: Outline;
	readonly ends: readonly EdgeEnd[];
	readonly nap: number;
	readonly extra: Extra;
}

function blankOf({ outline, ends, nap, extra }: Surface, called: BlankName, of: BoxCloth): Blank {
	const set = setIn(
		outline,
		ends.map((e) => Math.max(0, -e.reach)),
	);
	// A face smaller than its own seams is covered whole; the seam then lies on its edge.
	const usable = set.outline !== null && set.closed.length === 0;
	const covering: Covering = {
		id: `${of.owner}.carpet.${called.key}`,
		label: called.label,
		name: `${of.box}: ${called.covers}`,
		owner: of.owner,
		covers: called.covers,
		cloth: of.cloth.id,
		outline: usable ? set.outline : outline,
		edges: usable
			? set.from.map((e) => edgeFor(e === null ? null : ends[e]))
			: ends.map((e) => edgeFor(e)),
		steps: [],
		windows: [],
		nap,
		anyWay: false,
		count: 1,
		lot: of.owner,
		seams: [],
	};
	const holes: BlankMark[] = extra.holes.map((line) => ({
		kind: 'hole',
		line: flatten(line, CHORD_ERROR),
		closed: true,
	}));
	return coveringBlank(covering, of.cloth, of.shop.ruler, {
		...extra,
		marks: [...extra.marks, ...holes],
	}).blank;
}

const NOWHERE: EdgeEnd = { kind: 'under', reach: 0 };
const edgeFor = (end: EdgeEnd | null | undefined): ClothEdge => clothEdgeOf(end ?? NOWHERE);
