import { direction, type EdgeRun, type Point } from '../../../geometry';
import { after, apply, isFlat, movedRun, SAME, stretchOf, type Affine } from '../affine';
import { gathered, runOf } from './entities';
import { numberOf, textOf, type DxfEntity } from './groups';

/** Blocks in blocks in blocks: deeper than this is no drawing of a panel. */
const DEEPEST = 8;

/**
 * A curve the file leaves open by more than this many times what curves are followed to, 0.1 mm in
 * all, is not taken.
 */
const CERTAIN = 5;

interface Block {
	readonly base: Point;
	readonly entities: readonly DxfEntity[];
}

/** What a drawing came to with its blocks put in where they belong. */
export interface Expanded {
	readonly runs: readonly EdgeRun[];
	/** Kinds of entity that could not be followed, and that draw no outline. */
	readonly unclear: readonly string[];
	readonly others: readonly string[];
	/**
	 * Curves given only by points they pass through: how far off the taken ones and the others may
	 * be, in the drawing's unit.
	 */
	readonly doubts: readonly number[];
	readonly uncertain: readonly number[];
	/** Blocks put in that the file does not hold, or that hold themselves. */
	readonly missing: readonly string[];
	readonly endless: readonly string[];
	/** Layers something is drawn on, by their names in small letters. */
	readonly layers: ReadonlyMap<string, string>;
	/** Layers something was left out of because they are switched off or frozen. */
	readonly unseen: ReadonlySet<string>;
	/** False when the count stopped at the limit. */
	readonly whole: boolean;
}

export interface Wanted {
	/** Drawing layer by name; empty for all. */
	readonly layer: string;
	/** Layers that are not seen, by their names in small letters. */
	readonly unseen: ReadonlyMap<string, 'off' | 'frozen'>;
	/** How closely curves are followed, in the drawing's unit. */
	readonly fine: number;
	/**
	 * Most entities and corners looked at, copies counted: a few nested blocks can stand for
	 * billions.
	 */
	readonly most: number;
}

/**
 * All runs of a drawing, those of its blocks copied, turned and scaled to where they are put in.
 */
export function expanded(
	entities: readonly DxfEntity[],
	blocks: readonly DxfEntity[],
	wanted: Wanted,
): Expanded {
	const work = new Expansion(blocksOf(blocks), wanted);
	work.draw(gathered(entities), { to: SAME, layer: '', inside: [] });
	return work;
}

/** Blocks by their names, which are not told apart by case. */
function blocksOf(list: readonly DxfEntity[]): Map<string, Block> {
	const blocks = new Map<string, Block>();
	let open: { name: string; base: Point; entities: DxfEntity[] } | null = null;
	const close = (): void => {
		if (open) blocks.set(open.name, { base: open.base, entities: gathered(open.entities) });
		open = null;
	};
	for (const e of list) {
		if (e.type === 'BLOCK') {
			close();
			const base = { x: numberOf(e, 10), y: numberOf(e, 20) };
			open = { name: textOf(e, 2).toUpperCase(), base, entities: [] };
		} else if (e.type === 'ENDBLK') close();
		else open?.entities.push(e);
	}
	close();
	return blocks;
}

/** Where a list of entities is drawn. */
interface Place {
	readonly to: Affine;
	/** Layer of the insert it came by: what lies on layer 0 of a block takes that one. */
	readonly layer: string;
	readonly inside: readonly string[];
}

class Expansion implements Expanded {
	readonly runs: EdgeRun[] = [];
	readonly unclear: string[] = [];
	readonly others: string[] = [];
	readonly doubts: number[] = [];
	readonly uncertain: number[] = [];
	readonly missing: string[] = [];
	readonly endless: string[] = [];
	readonly layers = new Map<string, string>();
	readonly unseen = new Set<string>();
	whole = true;
	private counted = 0;
	private readonly followed = new Map<DxfEntity, Map<number, ReturnType<typeof runOf>>>();

	constructor(
		private readonly blocks: ReadonlyMap<string, Block>,
		private readonly wanted: Wanted,
	) {}

	draw(entities: readonly DxfEntity[], place: Place): void {
		for (const e of entities) {
			if (!this.count(1)) return;
			const own = textOf(e, 8);
			const layer = place.inside.length > 0 && own === '0' ? place.layer : own;
			if (numberOf(e, 67) === 1) continue; // on paper, not in the drawing itself
			if (e.type === 'INSERT') {
				if (this.isSeen(layer, ['frozen'])) this.putIn(e, { ...place, layer });
				continue;
			}
			this.layers.set(layer.toLowerCase(), layer);
			if (this.isWanted(layer) && this.isSeen(layer, ['frozen', 'off'])) this.drawOne(e, place.to);
		}
	}

	/**
	 * What the person has switched off is no part of the drawing, unless it is asked for. A frozen
	 * layer takes along the blocks put in on it; one that is off does not.
	 */
	private isSeen(layer: string, hiding: readonly string[]): boolean {
		const how = this.wanted.unseen.get(layer.toLowerCase());
		if (this.wanted.layer !== '' || how === undefined || !hiding.includes(how)) return true;
		this.unseen.add(layer);
		return false;
	}

	private isWanted(layer: string): boolean {
		return this.wanted.layer === '' || layer.toLowerCase() === this.wanted.layer.toLowerCase();
	}

	private count(n: number): boolean {
		this.counted += n;
		if (this.counted > this.wanted.most) this.whole = false;
		return this.whole;
	}

	private drawOne(e: DxfEntity, to: Affine): void {
		const run = isFlat(to) ? 'unclear' : this.follow(e, this.wanted.fine / stretchOf(to));
		if (run === 'unclear') this.unclear.push(e.type);
		else if (!run) this.others.push(e.type);
		else if (this.isCertain((run.doubt ?? 0) * stretchOf(to))) this.take(e, run, to);
	}

	private take(e: DxfEntity, run: EdgeRun, to: Affine): void {
		const moved = to === SAME ? run : movedRun(run, to, this.wanted.fine);
		// Drawn out, a circle may have become thousands of edges: what came of it counts.
		if (!this.count(moved.corners.length)) return;
		if (moved.corners.every((c) => Number.isFinite(c.x) && Number.isFinite(c.y)))
			this.runs.push(moved);
		else this.unclear.push(e.type);
	}

	private isCertain(doubt: number): boolean {
		if (doubt <= this.wanted.fine / 10) return true;
		const certain = doubt <= CERTAIN * this.wanted.fine;
		(certain ? this.doubts : this.uncertain).push(doubt);
		return certain;
	}

	/** A curve is followed once for all its copies of about the same size. */
	private follow(e: DxfEntity, fine: number): ReturnType<typeof runOf> {
		const size = Math.floor(Math.log2(fine));
		if (!Number.isFinite(size)) return 'unclear';
		const known = this.followed.get(e) ?? new Map<number, ReturnType<typeof runOf>>();
		this.followed.set(e, known);
		const found = known.get(size);
		if (found !== undefined) return found;
		const made = runOf(e, 2 ** size);
		known.set(size, made);
		return made;
	}

	private putIn(e: DxfEntity, place: Place): void {
		const name = textOf(e, 2).toUpperCase();
		const block = this.blocks.get(name);
		if (!block) {
			this.missing.push(textOf(e, 2));
			return;
		}
		if (place.inside.includes(name) || place.inside.length >= DEEPEST) {
			this.endless.push(textOf(e, 2));
			return;
		}
		const inside = [...place.inside, name];
		for (const copy of copiesOf(e, block.base)) {
			if (!this.count(1)) return;
			this.draw(block.entities, { ...place, to: after(copy, place.to), inside });
		}
	}
}

/** Where the copies of a block lie: one, or rows and columns of them. */
function* copiesOf(e: DxfEntity, base: Point): Generator<Affine> {
	const { x: cos, y: sin } = direction(numberOf(e, 50));
	const [sx, sy] = [numberOf(e, 41, 1), numberOf(e, 42, 1)];
	// Turned over, the plane of the insert is seen from behind: x runs the other way.
	const over = numberOf(e, 230, 1) < 0 ? -1 : 1;
	const whole = (n: number): number => Math.max(1, Math.floor(n));
	const [columns, rows] = [whole(numberOf(e, 70, 1)), whole(numberOf(e, 71, 1))];
	for (let row = 0; row < rows; row++)
		for (let column = 0; column < columns; column++) {
			const [dx, dy] = [column * numberOf(e, 44), row * numberOf(e, 45)];
			const at = {
				x: numberOf(e, 10) + dx * cos - dy * sin,
				y: numberOf(e, 20) + dx * sin + dy * cos,
			};
			const turned = {
				a: over * cos * sx,
				b: sin * sx,
				c: -over * sin * sy,
				d: cos * sy,
				e: 0,
				f: 0,
			};
			const corner = apply(turned, base);
			yield { ...turned, e: over * at.x - corner.x, f: at.y - corner.y };
		}
}
