import type { Problem } from '../../job/problem';
import type { BoxSkin } from '../covering';
import type { Need } from '../need';
import type { Part } from '../part';

/** All that is worked out of one box. */
export interface BoxPlan {
	readonly id: string;
	readonly name: string;
	readonly parts: readonly Part[];
	readonly problems: readonly Problem[];
	readonly needs: readonly Need[];
	readonly skin: BoxSkin | null;
	readonly mass: number; // kg, finished without drivers
}
