import { materialOf } from '../../../job';
import {
	area,
	bounds,
	perimeter,
	moved,
	liesIn,
	type Outline,
	rectangle,
	same,
} from '../../../geometry';
import { ticks, toMm, snap, theOne, TICKS_PER_MM } from '../../../measure';
import type { FaceWork, Part } from '../../part';
import { say, type Bench } from '../bench';
import type { PanelDetail } from '../figures';
import { boardWork, coverWork, magnetWork, seatWork } from './face-work';

/* The pieces of board a panel is made of. */

type Figures = Omit<PanelDetail, 'assembly'>;

/** A piece before it is a part: where it lies in the panel's frame. */
interface Piece {
	readonly key: string;
	readonly name: string;
	readonly outline: Outline;
	readonly holes: readonly Outline[];
	readonly material: string;
	readonly show: boolean;
	readonly grooved: number; // length of knife groove on it
	readonly times?: number;
	readonly notes: readonly string[];
	readonly work: readonly FaceWork[];
}

/** Parts of one panel as it is drawn; the mirrored ones of a pair are made from these. */
export function panelParts(bench: Bench, f: Figures): Part[] {
	const pieces = [
		...boardPieces(bench, f),
		...layerPieces(bench, f),
		...coverPieces(bench, f),
		...ringPieces(bench, f),
	];
	return pieces.map((p, i) => partOf(bench, f, p, i));
}

function boardPieces(bench: Bench, f: Figures): Piece[] {
	const holes = boardHoles(f);
	const several = f.leaves.length > 1;
	return f.leaves.map((outline, i) => ({
		key: several ? `board-${i + 1}` : 'board',
		name: several ? `${bench.panel.name}: leaf ${i + 1}` : bench.panel.name,
		outline,
		holes: holes.filter((h) => liesIn(h, outline)),
		material: f.material,
		show: f.cloth === null,
		grooved: (f.groove?.length ?? 0) / f.leaves.length,
		notes: [...(bench.panel.note ? [bench.panel.note] : []), ...seatsIn(bench, f, null)],
		work: boardWork(f, outline),
	}));
}

/** Everything cut through the board itself. */
export function boardHoles(f: Figures): Outline[] {
	const layers = f.layers.flatMap((l) =>
		l.on === null && l.hole && (l.place === 'recessed' || l.bottom <= 0) ? [l.hole] : [],
	);
	return [
		...f.windows.map((w) => w.hole),
		...f.covers.map((c) => c.hole),
		...layers,
		...f.rings.map((r) => r.hole).filter((h) => liesIn(h, f.fit.board)),
	];
}

function layerPieces(bench: Bench, f: Figures): Piece[] {
	return f.layers.flatMap((l) => {
		const { piece } = l;
		if (!piece) return [];
		const { note } = theOne(bench.panel.layers, (asked) => asked.id === l.id);
		const recess = l.place === 'recessed';
		// What is cut through the board beneath is cut through a raised layer lying over it as
		// well.
		const over = recess ? [] : [...f.windows.map((w) => w.hole), ...f.covers.map((c) => c.hole)];
		const letIn = f.layers.flatMap((o) =>
			o.on === l.id && o.hole && (o.place === 'recessed' || o.bottom <= l.bottom) ? [o.hole] : [],
		);
		const holes = [...over, ...letIn].filter((h) => liesIn(h, piece));
		return [
			{
				key: l.id,
				name: recess ? `${l.name}: floor` : l.name,
				outline: piece,
				holes,
				material: l.material,
				show: l.covering === 'bare',
				grooved: 0,
				notes: [...(note === '' ? [] : [note]), ...seatsIn(bench, f, l.id)],
				work: seatWork(f, l.id, piece),
			},
		];
	});
}

/** Pockets to be routed in a board for pieces that are set in. */
function seatsIn(bench: Bench, f: Figures, host: string | null): string[] {
	return f.layers
		.filter((l) => l.on === host && l.place === 'raised' && l.hole)
		.filter((l) => host !== null || l.bottom > 0)
		.map((l) => `Seat for ${l.name}: ${say(bench, l.depth)} deep`);
}

function coverPieces(bench: Bench, f: Figures): Piece[] {
	return f.covers.flatMap((c) => [
		{
			key: `cover-${c.id}`,
			name: c.name,
			outline: c.board,
			holes: c.finger ? [c.finger] : [],
			material: f.material,
			show: c.cloth === null,
			grooved: c.cloth !== null && f.groove ? perimeter(c.board) : 0,
			notes: [
				coverSize(bench, c),
				...(c.cloth === null
					? []
					: ['Cloth turned under it lifts it off its ledge: trim it in the knife groove']),
			],
			work: coverWork(f, c),
		},
		...c.layers.map((l) => ({
			key: `cover-${c.id}-${l.id}`,
			name: `${c.name}: ${l.name}`,
			outline: c.board,
			holes: c.finger ? [c.finger] : [],
			material: l.material,
			show: c.cloth === null,
			grooved: 0,
			notes: [`Glued on ${c.name}, so that its face runs on`],
			work: [],
		})),
		{
			key: `ledge-${c.id}`,
			name: `${c.name}: ledge`,
			outline: c.ledge.outer,
			holes: [c.ledge.inner],
			material: c.ledge.material,
			show: false,
			grooved: 0,
			notes: [`Glued behind the board round the hole for ${c.name} in ${bench.panel.name}`],
			work: magnetWork(c, 'near'),
		},
	]);
}

/** What is checked once it lies in its hole. */
function coverSize(bench: Bench, { finished, gap }: Figures['covers'][number]): string {
	const { length, width } = bounds(finished);
	return `Finished ${say(bench, length)} × ${say(bench, width)}, gap ${say(bench, gap)} all round`;
}

function ringPieces(bench: Bench, f: Figures): Piece[] {
	return f.rings.map((r) => {
		const asked = theOne(bench.panel.rings, (x) => x.id === r.id);
		return {
			key: `ring-${r.id}`,
			name: r.name,
			outline: r.board.outer,
			holes: [r.board.inner],
			material: asked.material,
			show: asked.cloth === null,
			grooved: 0,
			times: asked.sides,
			notes: r.rebate ? [`Let in: rebate ${say(bench, r.rebate.depth)} deep`] : [],
			work: [],
		};
	});
}

function partOf(bench: Bench, f: Figures, p: Piece, i: number): Part {
	const material = materialOf(bench.job, p.material);
	if (!material) throw new Error(`bug: no board '${p.material}'`);
	const box = bounds(p.outline);
	const home = (o: Outline): Outline => moved(o, -box.x, -box.y);
	const outline = home(p.outline);
	const holes = p.holes.map(home);
	const faceWork = p.work.map((w) => ({ ...w, line: home(w.line) }));
	const net = Math.abs(area(outline)) - holes.reduce((sum, h) => sum + Math.abs(area(h)), 0);
	const square = isRectangle(outline, box.length, box.width);
	const holesRound = holes.reduce((sum, h) => sum + perimeter(h), 0);
	const routed = holesRound + p.grooved + (square ? 0 : perimeter(outline));
	return {
		id: `${bench.panel.id}.${p.key}`,
		label: `${f.label}${i === 0 ? '' : `.${i}`}${f.hand ?? ''}`,
		name: p.name,
		owner: bench.panel.id,
		material: p.material,
		thickness: material.measured,
		count: bench.panel.count * (p.times ?? 1),
		length: ticks(box.length),
		width: ticks(box.width),
		...(square ? {} : { outline }),
		holes,
		...(faceWork.length > 0 ? { faceWork } : {}),
		grain: material.grain ? 'length' : 'any',
		bevels: [],
		face: 'front',
		show: p.show,
		routed: snap(routed),
		mass: (net / TICKS_PER_MM ** 2) * toMm(material.measured) * material.density * 1e-9,
		notes: p.notes,
	};
}

function isRectangle(o: Outline, length: number, width: number): boolean {
	const whole = rectangle(0, 0, length, width);
	return o.length === 4 && o.every((c) => !c.bulge && whole.some((w) => same(w, c)));
}
