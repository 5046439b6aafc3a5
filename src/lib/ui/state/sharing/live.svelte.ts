import type { Cutting, Present } from '../../../store';
import type { SharedView } from './shared-view.svelte';

/** What passes between the devices of a shop while they are there, and is kept nowhere. */
class Live {
	/** Other devices that have the same job open. */
	present = $state.raw<readonly Present[]>([]);
	/** What is in the saw of this device. */
	cutting = $state.raw<Cutting | null>(null);
}

const known = new WeakMap<SharedView, Live>();

/** Apart from the view itself, so that a start without a shop need not fetch it. */
export function liveOf(shared: SharedView): Live {
	const live = known.get(shared) ?? new Live();
	known.set(shared, live);
	return live;
}
