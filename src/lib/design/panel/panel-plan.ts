import type { Problem } from '../../job';
import type { Covering } from '../covering';
import type { Need } from '../need';
import type { Part } from '../part';
import type { PanelDetail } from './figures';

/** All that is worked out of one panel. */
export interface PanelPlan {
	readonly id: string;
	readonly name: string;
	readonly parts: readonly Part[];
	readonly coverings: readonly Covering[];
	readonly problems: readonly Problem[];
	readonly needs: readonly Need[];
	/**
	 * Every figure of the panel for screen and paper; absent when there is no board to speak of.
	 */
	readonly detail?: PanelDetail;
}
