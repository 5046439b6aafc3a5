import {
	bounds,
	common,
	liesIn,
	linesInside,
	mirrored,
	moved,
	type Outline,
	type Point,
	whereIs,
} from '../../geometry';
import { lastOf, nth } from '../../measure';
import type { CoverFigure, LayerFigure, PanelDetail, PanelPlan, RingFigure } from '../panel';
import type { Part } from '../part';
import { marked } from './form';
import { Numbers } from './numbers';
import type { CutLine, KnifeGroove, Marked, Operation } from './operation';
import { outlineCut } from './outline-cut';
import { withArcsOf } from './with-arcs';
import type { WorkFace, WorkPiece } from './work-piece';

/** What is made in one piece of a panel, in the frame of the panel, seen from the front. */
interface PanelPiece {
	readonly outline: Outline;
	readonly front: readonly Made[];
	readonly back: readonly Made[];
}

type Made =
	| {
			readonly kind: 'cut';
			readonly name: string;
			readonly outline: Outline;
			readonly depth: number | null;
	  }
	| {
			readonly kind: 'place';
			readonly name: string;
			readonly outline: Outline;
			readonly space?: Outline;
	  }
	| {
			readonly kind: 'holes';
			readonly name: string;
			readonly diameter: number;
			readonly depth?: number | null;
			readonly deep?: string;
			readonly at: readonly Point[];
	  }
	| { readonly kind: 'groove'; readonly groove: Groove };

type Groove = Omit<KnifeGroove, 'kind' | 'ends'>;

/** A part of a panel; null where the panel knows no such piece. */
export function panelPiece(panel: PanelPlan, part: Part): WorkPiece | null {
	const d = panel.detail;
	if (!d) return null;
	const key = part.id.slice(panel.id.length + 1);
	const right = d.both && key.endsWith('-R');
	const piece = pieceOf(d, d.both ? key.replace(/-[LR]$/, '') : key);
	return piece && { part, faces: facesOf(piece, part, right) };
}

function pieceOf(d: PanelDetail, key: string): PanelPiece | null {
	const leaf = /^board(?:-(\d+))?$/.exec(key);
	const outline = leaf && d.leaves[Number(leaf[1] ?? 1) - 1];
	if (outline) return boardPieceOf(d, outline);
	const layer = d.layers.find((l) => l.id === key);
	if (layer?.piece) return layerPieceOf(d, layer, layer.piece);
	for (const c of d.covers) {
		if (key === `cover-${c.id}`) return coverPieceOf(d, c);
		if (key === `ledge-${c.id}`) return ledgePieceOf(c);
		if (c.layers.some((l) => key === `cover-${c.id}-${l.id}`))
			return { outline: c.board, front: fingerOf(c), back: [] };
	}
	const ring = d.rings.find((r) => key === `ring-${r.id}`);
	return ring ? ringPieceOf(ring) : null;
}

function boardPieceOf(d: PanelDetail, leaf: Outline): PanelPiece {
	const from = d.fit.sizes.board;
	const drilled = [...new Set(d.drills.map((h) => `${h.of}\n${h.diameter}`))].map((key) =>
		d.drills.filter((h) => `${h.of}\n${h.diameter}` === key),
	);
	const front: Made[] = [
		...throughBoard(d),
		...d.rings.flatMap((r) =>
			r.rebate && liesIn(r.hole, d.fit.board)
				? [
						{
							kind: 'cut' as const,
							name: `rebate for ${r.name}`,
							outline: r.rebate.outline,
							depth: r.rebate.depth,
						},
					]
				: [],
		),
		...seatsIn(d, null, 0),
		...drilled.map((alike): Made => ({
			kind: 'holes',
			name: `for ${nth(alike, 0).of}`,
			diameter: nth(alike, 0).diameter,
			at: alike.map((h) => ({ x: from.x + h.x, y: from.y + h.y })),
		})),
		...d.devices.map((v): Made => ({
			kind: 'place',
			name: v.name,
			outline: v.body,
			space: v.space,
		})),
		...gluedOn(d, null),
	];
	const outline = d.leaves.length === 1 ? leaf : withArcsOf(leaf, d.fit.board);
	return { outline, front: onLeaf(d, front, leaf), back: onLeaf(d, behindBoard(d), leaf) };
}

/** Cut right through the board itself, each thing by its name. */
function throughBoard(d: PanelDetail): Made[] {
	const layers = d.layers.flatMap((l) =>
		l.on === null && l.hole && (l.place === 'recessed' || l.bottom <= 0)
			? [{ name: `opening for ${l.name}`, outline: l.hole }]
			: [],
	);
	return [
		...cutOuts(d),
		...layers,
		...d.rings
			.filter((r) => liesIn(r.hole, d.fit.board))
			.map((r) => ({ name: `hole for ${r.name}`, outline: r.hole })),
	].map((h) => ({ kind: 'cut', ...h, depth: null }));
}

/** Windows, and the holes of covers: cut through the board and the layers over it. */
const cutOuts = (d: PanelDetail): { name: string; outline: Outline }[] => [
	...d.windows.map((w) => ({ name: w.name, outline: w.hole })),
	...d.covers.map((c) => ({ name: `hole for ${c.name}`, outline: c.hole })),
];

/** Pockets for pieces that are let in without going right through. */
function seatsIn(d: PanelDetail, host: string | null, bottom: number): Made[] {
	return d.layers.flatMap((l) =>
		l.on === host && l.place === 'raised' && l.hole && l.bottom > bottom
			? [{ kind: 'cut' as const, name: `seat for ${l.name}`, outline: l.hole, depth: l.depth }]
			: [],
	);
}

/** Raised layers that lie on a face as it is. */
function gluedOn(d: PanelDetail, host: string | null): Made[] {
	return d.layers.flatMap((l) =>
		l.on === host && l.place === 'raised' && !l.hole && l.piece
			? [{ kind: 'place' as const, name: l.name, outline: l.piece }]
			: [],
	);
}

/** A hole without a depth is drilled through, and a clip's would show in the face. */
/** Common practice, no source: how far a clip reaches only the clip itself tells. */
const CLIP_DEEP =
	'as deep as the clip reaches, not through: measure a clip and set a stop on the drill';

function behindBoard(d: PanelDetail): Made[] {
	const { groove, fixings } = d;
	const round = d.windows.filter((w) => w.wrapped).map((w) => w.name);
	return [
		...(groove ? [{ kind: 'groove' as const, groove: { ...groove, round } }] : []),
		...(fixings
			? [
					{
						kind: 'holes' as const,
						name: fixings.kind,
						diameter: fixings.hole,
						at: fixings.at,
						depth: fixings.depth,
						...(fixings.kind === 'clips' ? { deep: CLIP_DEEP } : {}),
					},
				]
			: []),
		...d.layers.flatMap((l) =>
			l.place === 'recessed' && l.piece
				? [{ kind: 'place' as const, name: `floor of ${l.name}`, outline: l.piece }]
				: [],
		),
		...d.covers.map((c) => ({
			kind: 'place' as const,
			name: `ledge of ${c.name}`,
			outline: c.ledge.outer,
		})),
	];
}

/** What of all this lies on one leaf of a board that folds. */
function onLeaf({ leaves }: PanelDetail, made: readonly Made[], leaf: Outline): Made[] {
	if (leaves.length === 1) return [...made];
	return made.flatMap((m): Made[] => {
		if (m.kind === 'holes') {
			const at = m.at.filter((p) => whereIs(p, leaf) !== 'outside');
			return at.length === 0 ? [] : [{ ...m, at }];
		}
		if (m.kind === 'groove') {
			const runs = linesInside(m.groove.runs, [leaf]);
			return runs.length === 0 ? [] : [{ ...m, groove: { ...m.groove, runs } }];
		}
		if (m.outline.every((p) => whereIs(p, leaf) !== 'outside')) return [m];
		return common([m.outline], [leaf]).map((r) => ({ ...m, outline: r.outline }));
	});
}

function layerPieceOf(d: PanelDetail, l: LayerFigure, piece: Outline): PanelPiece {
	const over = l.place === 'recessed' ? [] : cutOuts(d);
	const letIn = d.layers.flatMap((o) =>
		o.on === l.id && o.hole && (o.place === 'recessed' || o.bottom <= l.bottom)
			? [{ name: `opening for ${o.name}`, outline: o.hole }]
			: [],
	);
	const through = [...over, ...letIn]
		.filter((h) => liesIn(h.outline, piece))
		.map((h): Made => ({ kind: 'cut', ...h, depth: null }));
	return {
		outline: piece,
		front: [...through, ...seatsIn(d, l.id, l.bottom), ...gluedOn(d, l.id)],
		back: [],
	};
}

/** A cover is turned round all its edges, and its cloth is trimmed in a groove of its own. */
function coverPieceOf(d: PanelDetail, c: CoverFigure): PanelPiece {
	const g = d.groove;
	const groove: Made[] =
		c.cloth !== null && g
			? [{ kind: 'groove', groove: { ...g, runs: [], stops: [], round: [] } }]
			: [];
	return { outline: c.board, front: fingerOf(c), back: groove };
}

const fingerOf = (c: CoverFigure): Made[] =>
	c.finger ? [{ kind: 'cut', name: 'finger hole', outline: c.finger, depth: null }] : [];

function ledgePieceOf({ ledge, magnets, magnet }: CoverFigure): PanelPiece {
	return {
		outline: ledge.outer,
		front: [
			{ kind: 'cut', name: 'inner edge', outline: ledge.inner, depth: null },
			...(magnet === null
				? []
				: [{ kind: 'holes' as const, name: 'magnets', diameter: magnet, at: magnets }]),
		],
		back: [],
	};
}

function ringPieceOf({ board }: RingFigure): PanelPiece {
	return {
		outline: board.outer,
		front: [{ kind: 'cut', name: 'inner edge', outline: board.inner, depth: null }],
		back: [],
	};
}

function facesOf(piece: PanelPiece, part: Part, right: boolean): WorkFace[] {
	const numbers = new Numbers();
	const front = faceOf(piece, 'front', right, part, numbers);
	if (piece.back.length === 0) return [front];
	return [front, faceOf(piece, 'back', right, part, numbers)];
}

function faceOf(
	piece: PanelPiece,
	seen: 'front' | 'back',
	right: boolean,
	part: Part,
	numbers: Numbers,
): WorkFace {
	const box = bounds(piece.outline);
	// The right one of a pair is the mirror image; so is either one from behind.
	const over = right !== (seen === 'back');
	const home = (o: Outline): Outline => {
		const at = moved(o, -box.x, -box.y);
		return over ? mirrored(at, box.length / 2) : at;
	};
	const outline = home(piece.outline);
	return {
		seen,
		from: seen === part.face ? 'blank' : 'face',
		across: box.length,
		up: box.width,
		outline,
		behind: null,
		edges: [],
		grain: part.grain === 'any' ? 'any' : 'across',
		through: seen === 'front' ? [] : throughOf(piece).map(home),
		operations: [
			...(seen === 'front' ? outlineCut(outline, box.length, box.width) : []),
			...piece[seen].map((m) => operationOf(m, home, numbers)),
		],
	};
}

const throughOf = ({ front }: PanelPiece): Outline[] =>
	front.flatMap((m) => (m.kind === 'cut' && m.depth === null ? [m.outline] : []));

function operationOf(m: Made, home: (o: Outline) => Outline, numbers: Numbers): Operation {
	switch (m.kind) {
		case 'cut':
		case 'place': {
			const made = marked(home(m.outline));
			const { form } = made;
			if (m.kind === 'place') return placeOf(m, made, home, numbers);
			if (form.kind !== 'round')
				return { kind: 'cut', n: numbers.take(), name: m.name, ...made, depth: m.depth };
			const { diameter, centre } = form;
			const hole = { name: m.name, diameter, depth: m.depth, at: [centre] };
			return { kind: 'holes', n: numbers.take(), ...hole };
		}
		case 'holes': {
			const at = m.at.map((p) => nth(home([p]), 0));
			const { name, diameter, depth = null, deep } = m;
			const hole = { name, diameter, depth, ...(deep === undefined ? {} : { deep }) };
			return { kind: 'holes', n: numbers.take(at.length), ...hole, at };
		}
		case 'groove': {
			const runs = m.groove.runs.map((run) => run.map((p) => nth(home([p]), 0)));
			return { kind: 'groove', ...m.groove, runs, ends: endsOf(runs) };
		}
	}
}

function placeOf(
	{ name, space }: Extract<Made, { kind: 'place' }>,
	made: Marked,
	home: (o: Outline) => Outline,
	numbers: Numbers,
): Operation {
	return { kind: 'place', n: numbers.take(), name, ...made, ...(space && { space: home(space) }) };
}

/** Where stretches that do not close on themselves start and end. */
function endsOf(runs: readonly (readonly Point[])[]): CutLine[] {
	return runs.flatMap((run): CutLine[] => {
		const [a, b] = [nth(run, 0), lastOf(run)];
		return Math.hypot(a.x - b.x, a.y - b.y) < 2 ? [] : [[a, b]];
	});
}
