import type { CoverSet } from './exact-cover';
import type { Generation } from './generation';
import type { Pricing } from './pricing';

/** open: there are more sets than can be held. */
export type Listed = 'working' | 'whole' | 'open';

/**
 * Lists every set of pieces that a layout within the target could hold on one sheet: those worth no
 * less than their sheet costs, but for the gap. Pieces worth nothing are left out unless asked for:
 * they make many sets of one.
 */
export class Listing {
	readonly parts: CoverSet[] = [];
	private kind = -1;
	private first = 0;
	private firsts = 0;
	private searching = false;

	constructor(
		private readonly generation: Generation,
		private readonly pricings: readonly Pricing[],
		private readonly worthless: boolean,
		private readonly most: number,
	) {}

	/** Goes on for about `most` work, or to the end of the search from one first piece. */
	step(most: number): Listed {
		if (!this.searching && !this.next()) return 'whole';
		const pricing = this.pricings[this.kind]!;
		const over = pricing.run(most);
		const count = this.parts.length + pricing.found.length;
		if (pricing.cramped || count > this.most) return 'open';
		if (!over) return 'working';
		this.searching = false;
		for (const types of pricing.found) this.add(types);
		return 'working';
	}

	/** Begins the next search; false when there is none. */
	private next(): boolean {
		while (this.first === this.firsts) {
			if (++this.kind === this.pricings.length) return false;
			this.first = 0;
			this.firsts = this.pricings[this.kind]!.value(this.generation.worth, this.worthless);
		}
		const least = this.generation.costOf(this.kind) - this.generation.gap;
		this.pricings[this.kind]!.search(this.first++, least, 'all');
		return (this.searching = true);
	}

	private add(types: Int32Array): void {
		const { generation, kind } = this;
		const worth = types.reduce((sum, type) => sum + generation.worth[type]!, 0);
		this.parts.push({ types, loss: generation.costOf(kind) - worth, kind });
	}
}
