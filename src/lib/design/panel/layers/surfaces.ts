import { nth, ticks, TICKS_PER_MM, type Length } from '../../../measure';
import { area, liesIn, type Outline } from '../../../geometry';
import type { ClothEdge, Covering, ClothStep, Window } from '../../covering';
import type { Bench } from '../bench';
import { flushHeights } from './flush';
import type { CoverFigure, LayerFigure, PanelDetail, RingFigure } from '../figures';

/*
 * The surfaces of a panel that one piece of cloth each covers: the face with all that is covered
 * together with it, the layers wrapped by themselves, floors of recesses, covers and rings.
 */

type Figures = Omit<PanelDetail, 'assembly'>;

/** Coverings of one panel as it is drawn; the mirrored ones of a pair are made from these. */
export function coveringsOf(bench: Bench, f: Figures): Covering[] {
	const make = new Maker(bench, f);
	return [
		...make.face(),
		...f.layers.flatMap((l) => make.ownLayer(l)),
		...f.covers.flatMap((c) => make.cover(c)),
		...f.rings.flatMap((r, i) =>
			make.ring(r, bench.panel.rings.find((x) => x.id === r.id)?.cloth ?? null, i),
		),
	];
}

class Maker {
	private made = 0;

	/** What is glued on flush with each edge of the board and covered with it. */
	private readonly flush: readonly Length[];

	constructor(
		private readonly bench: Bench,
		private readonly f: Figures,
	) {
		const overFace = f.layers.filter(
			(l) => l.covering === 'with' && l.surface === null && l.place === 'raised',
		);
		this.flush = flushHeights(
			f.fit.board,
			overFace.flatMap((l) => (l.piece ? [{ piece: l.piece, step: l.step }] : [])),
		);
	}

	/** The face of the panel. */
	face(): Covering[] {
		const { f, bench } = this;
		if (!f.cloth) return [];
		const edges = f.fit.boardEdges.map((kind, i) => this.boardEdge(kind, i));
		const seams = f.seams;
		const windows = [...this.openings(), ...this.seats(null)];
		const base = this.covering('face', bench.panel.name, 'the face of the panel', f.cloth.id);
		const outline = f.fit.board;
		const foam = this.foam(f.foam > 0 ? outline : null, null, windows);
		return [{ ...base, ...foam, outline, edges, steps: this.steps(null), windows, seams }];
	}

	/** A layer wrapped by itself, or the covered floor of a recess. */
	ownLayer(l: LayerFigure): Covering[] {
		if (l.covering !== 'own' || l.cloth === null) return [];
		const flat = l.place === 'recessed';
		const outline = l.piece ?? l.hole;
		if (!outline) return [];
		const edge: ClothEdge = flat ? this.cutFlush() : this.turned(l.thickness, l.foam, null);
		const base = this.covering(l.id, l.name, flat ? `the floor of ${l.name}` : l.name, l.cloth);
		const windows = flat ? [] : this.seats(l.id);
		return [
			{
				...base,
				...this.foam(l.foam > 0 ? foamedOf(l) : null, l.id, windows),
				outline,
				edges: outline.map(() => edge),
				steps: flat ? [] : this.steps(l.id),
				windows,
				seams: [],
			},
		];
	}

	cover(c: CoverFigure): Covering[] {
		if (c.cloth === null) return [];
		const build = ticks(c.layers.reduce<number>((sum, l) => sum + l.step, this.f.thickness));
		const edge = this.turned(build, ticks(0), this.grooveEnd());
		const windows = c.finger
			? [{ outline: c.finger, edge: this.turned(build, ticks(0), null), name: 'Finger hole' }]
			: [];
		const base = this.covering(`cover-${c.id}`, c.name, c.name, c.cloth);
		return [
			{ ...base, outline: c.board, edges: c.board.map(() => edge), steps: [], windows, seams: [] },
		];
	}

	ring(r: RingFigure, cloth: string | null, i: number): Covering[] {
		if (cloth === null) return [];
		const edge = this.turned(r.thickness, ticks(0), null);
		const base = this.covering(`ring-${r.id}`, r.name, r.name, cloth);
		const sides = this.bench.panel.rings[i]?.sides ?? 1;
		return [
			{
				...base,
				count: base.count * sides,
				outline: r.board.outer,
				edges: r.board.outer.map(() => edge),
				steps: [],
				windows: [{ outline: r.board.inner, edge, name: 'Inner edge' }],
				seams: [],
			},
		];
	}

	private covering(key: string, name: string, covers: string, cloth: string) {
		const { bench, f } = this;
		const { panel } = bench;
		const mark = this.made++ === 0 ? '' : `.${this.made - 1}`;
		return {
			id: `${panel.id}.${key}`,
			label: `${f.label}${mark}${f.hand ?? ''}`,
			name: name === panel.name ? name : `${panel.name}: ${name}`,
			owner: panel.id,
			covers,
			cloth,
			nap: panel.nap,
			anyWay: panel.napAnyWay,
			count: panel.count,
			lot: panel.lot,
			insideCorners: panel.cornerPatches ? ('patched' as const) : ('said' as const),
		};
	}

	/**
	 * Foam beneath one cloth: all over its own board, and on each layer covered with it that has
	 * some of its own; cut out where a window lies in it.
	 */
	private foam(
		board: Outline | null,
		surface: string | null,
		windows: readonly Window[],
	): Pick<Covering, 'foam'> {
		const layers = this.f.layers
			.filter((l) => l.covering === 'with' && l.surface === surface && l.cloth !== null)
			.map((l) => (l.foam > 0 ? foamedOf(l) : null));
		const sheets = [board, ...layers].filter((o) => o !== null);
		const size = (o: Outline): number => Math.abs(area(o)) / TICKS_PER_MM ** 2;
		const cutOut = (sheet: Outline): number =>
			windows.filter((w) => liesIn(w.outline, sheet)).reduce((sum, w) => sum + size(w.outline), 0);
		const foam = sheets.reduce((sum, sheet) => sum + size(sheet) - cutOut(sheet), 0);
		return foam > 0 ? { foam } : {};
	}

	private boardEdge(kind: ClothEdge['kind'], i: number): ClothEdge {
		const build = ticks(this.f.thickness + nth(this.flush, i));
		const numbers = this.f.fit.boardNumbers[i] ?? [];
		if (kind !== 'wrapped') return { ...this.cutFlush(), kind, build, numbers };
		return { ...this.turned(build, this.f.foam, this.grooveEnd()), numbers };
	}

	private turned(build: Length, foam: Length, groove: ClothEdge['groove']): ClothEdge {
		const { margin, grip } = this.bench.panel;
		return { kind: 'wrapped', build: ticks(build + foam), groove, margin, grip };
	}

	private cutFlush(): ClothEdge {
		return {
			kind: 'bare',
			build: ticks(0),
			groove: null,
			margin: ticks(0),
			grip: this.bench.panel.grip,
		};
	}

	private grooveEnd(): ClothEdge['groove'] {
		const g = this.f.groove;
		return g && { offset: g.offset, depth: g.depth };
	}

	/** Layers covered together with the surface named (a layer's id, or null for the face). */
	private steps(surface: string | null): ClothStep[] {
		return this.f.layers
			.filter((l) => l.covering === 'with' && l.surface === surface && l.cloth !== null)
			.flatMap((l) => {
				const outline = l.place === 'raised' ? l.piece : l.hole;
				const index = this.bench.panel.layers.findIndex((asked) => asked.id === l.id);
				const layer = { name: l.name, index };
				return outline ? [{ outline, height: l.step, raised: l.place === 'raised', layer }] : [];
			});
	}

	/** Windows of the panel, holes of its covers and rings. */
	private openings(): Window[] {
		const { f } = this;
		const windows = f.windows.map((w) => ({
			outline: w.hole,
			name: w.name,
			index: this.bench.panel.windows.findIndex((asked) => asked.id === w.id),
			edge: w.wrapped
				? this.turned(this.buildAt(w.hole, w.build), this.foamAt(w.hole), this.grooveEnd())
				: { ...this.cutFlush(), build: this.buildAt(w.hole, w.build) },
		}));
		const covers = f.covers.map((c) => ({
			outline: c.hole,
			name: `Hole of ${c.name}`,
			// Behind the hole of a cover sits its ledge: the cloth is turned in and ends there.
			edge: {
				...this.turned(this.buildAt(c.hole, f.thickness), this.foamAt(c.hole), null),
				margin: ticks(0),
			},
		}));
		// A ring laps over the edge of its hole: the cloth is cut flush beneath it.
		const rings = f.rings
			.filter((r) => liesIn(r.hole, f.fit.board))
			.map((r) => ({ outline: r.hole, edge: { ...this.cutFlush(), build: f.thickness } }));
		return [...windows, ...covers, ...rings];
	}

	/** Boards at the edge of a hole: the layers that go all round it stand on the board there. */
	private buildAt(hole: Outline, board: Length): Length {
		return ticks(this.layersRound(hole).reduce<number>((sum, l) => sum + l.step, board));
	}

	/** The cloth comes down over the foam of the face as well; a layer has its own in its step. */
	private foamAt(hole: Outline): Length {
		return this.layersRound(hole).length > 0 ? ticks(0) : this.f.foam;
	}

	private layersRound(hole: Outline): LayerFigure[] {
		return this.f.layers.filter(
			(l) => l.place === 'raised' && l.covering === 'with' && l.piece && liesIn(hole, l.piece),
		);
	}

	/**
	 * Seats and recesses not covered with the surface they are cut in: the cloth is turned down
	 * into them.
	 */
	private seats(surface: string | null): Window[] {
		return this.f.layers.flatMap((l) => {
			if (l.covering === 'with' || !l.hole || this.hostSurface(l) !== surface) return [];
			const host = this.f.layers.find((h) => h.id === l.on);
			const foam = host ? host.foam : this.f.foam;
			const edge = { ...this.turned(l.depth, foam, null), margin: this.seatMargin(l) };
			return [{ outline: l.hole, edge, name: `Hole of ${l.name}` }];
		});
	}

	/** Through the board the cloth is turned on to the back; in a pocket it ends at the bottom. */
	private seatMargin(l: LayerFigure): Length {
		const through = l.place === 'recessed' || l.bottom <= 0;
		return through && l.on === null ? this.bench.panel.margin : ticks(0);
	}

	private hostSurface(l: LayerFigure): string | null | undefined {
		if (l.on === null) return this.f.cloth ? null : undefined;
		const host = this.f.layers.find((h) => h.id === l.on);
		return host && host.cloth !== null ? host.surface : undefined;
	}
}

/** What the foam of a layer covers: a raised piece, or the floor of a recess as it is seen. */
export function foamedOf(l: LayerFigure): Outline | null {
	return l.place === 'raised' ? l.piece : l.hole;
}
