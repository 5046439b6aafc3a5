/*
 * What is in hand does not move. While a field is typed in, lines above it come and go, and the
 * plan says other things; while a heading is pressed, what was left before it is told anew. A press
 * that ends beside what it began on does nothing. So whatever was pressed or took the keyboard last
 * is held where it stands in the window: the page is scrolled along under it and, where it cannot
 * scroll so far, gets room above or below.
 */

/** What a person takes hold of. */
const TAKES = 'input, select, textarea, button, summary, a';
/** Less than this, pixels, is nothing anybody sees. */
const SEEN = 0.5;

/**
 * Holds still whatever in this part of the page is in hand. What lies in `pinned` may move on its
 * drawing, so there the whole drawing is held.
 */
export function steady(pinned: string): (work: HTMLElement) => () => void {
	return (work) => {
		const slack = new Slack(work);
		let held: Element | null = null;
		/** Where it stands; null until the page has scrolled to it. */
		let top: number | null = null;
		const place = (): number => held?.getBoundingClientRect().top ?? 0;

		function hold(): void {
			if (top === null || !held?.isConnected) return;
			if (Math.abs(place() - top) >= SEEN) slack.make(place, top);
		}
		function settle(): void {
			if (held?.isConnected) top = place();
		}
		function found(event: Event): boolean {
			const taken = (event.target as Element).closest(TAKES);
			const now = taken?.closest(pinned) ?? taken;
			if (!now || now === held) return false;
			held = now;
			// The browser's own way of keeping a page still knows nothing of what is in hand.
			document.documentElement.style.overflowAnchor = 'none';
			return true;
		}
		function pressed(event: Event): void {
			found(event);
			settle();
			slack.clear();
			hold();
		}
		/** By keys it may come from far off: the page scrolls to it first. */
		function focused(event: Event): void {
			if (!found(event)) return;
			top = null;
			requestAnimationFrame(settle);
		}

		/** What is pressed elsewhere must not be scrolled away from under the finger. */
		function pressedElsewhere({ target }: Event): void {
			if (!work.contains(target as Node)) held = null;
		}

		const changed = new MutationObserver(hold);
		changed.observe(document.body, {
			...{ subtree: true, childList: true, characterData: true },
			attributeFilter: ['open', 'class', 'aria-invalid'],
		});
		const sized = new ResizeObserver(hold);
		for (const part of work.children) sized.observe(part);
		const ends = new AbortController();
		const { signal } = ends;
		work.addEventListener('pointerdown', pressed, { signal, capture: true });
		window.addEventListener('pointerdown', pressedElsewhere, { signal, capture: true });
		work.addEventListener('focusin', focused, { signal });
		window.addEventListener('scroll', settle, { signal, passive: true });
		window.addEventListener('resize', settle, { signal });
		return () => {
			ends.abort();
			changed.disconnect();
			sized.disconnect();
			document.documentElement.style.overflowAnchor = '';
		};
	};
}

/** Room that a page gets where it cannot scroll far enough. */
class Slack {
	#above = 0;
	#below = 0;
	readonly #work: HTMLElement;

	constructor(work: HTMLElement) {
		this.#work = work;
	}

	/** Brings what stands at `place` to stand at `top` again. */
	make(place: () => number, top: number): void {
		const off = (): number => place() - top;
		if (off() > 0) this.#set(this.#above - Math.min(this.#above, off()), this.#below);
		window.scrollBy({ top: off(), behavior: 'instant' });
		if (off() <= -SEEN) this.#set(this.#above - off(), this.#below);
		if (off() < SEEN) return;
		this.#set(this.#above, this.#below + off());
		window.scrollBy({ top: off(), behavior: 'instant' });
	}

	clear(): void {
		if (this.#above > 0 || this.#below > 0) this.#set(0, 0);
	}

	#set(above: number, below: number): void {
		this.#above = above;
		this.#below = below;
		this.#work.style.setProperty('--slack-above', `${above}px`);
		this.#work.style.setProperty('--slack-below', `${below}px`);
	}
}
