/** A spot of the screen. */
interface Spot {
	readonly clientX: number;
	readonly clientY: number;
}
type Finger = Spot & { readonly pointerId: number };

/** What moving a finger does: two come nearer or go apart round one, one slides. */
export type Gesture =
	| { readonly kind: 'pinch'; readonly times: number; readonly round: Spot }
	| { readonly kind: 'slide'; readonly from: Spot; readonly to: Spot };

/** The fingers, or the mouse, on a drawing. */
export class Fingers {
	readonly #held = new Map<number, Finger>();

	press(at: Finger): void {
		this.#held.set(at.pointerId, at);
	}

	/** Null for a finger that is not down. */
	move(to: Finger): Gesture | null {
		const from = this.#held.get(to.pointerId);
		if (!from) return null;
		this.#held.set(to.pointerId, to);
		const other = [...this.#held.values()].find((f) => f.pointerId !== to.pointerId);
		if (!other) return { kind: 'slide', from, to };
		return { kind: 'pinch', times: apart(to, other) / apart(from, other), round: other };
	}

	lift({ pointerId }: Finger): void {
		this.#held.delete(pointerId);
	}
}

/** Pixels; fingers on one spot are a pixel apart. */
const apart = (a: Spot, b: Spot): number =>
	Math.max(1, Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY));
