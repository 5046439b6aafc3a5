import type { BoxPlan, Need, PanelPlan, Part } from '../design';
import type { BoardLayouts } from '../layout';
import type { RunPlan } from '../runs';
import type { Blank } from '../wrap';

/** What the cautions of a plan depend on. */
export interface Dangers {
	readonly boxes: readonly BoxPlan[];
	readonly panels: readonly PanelPlan[];
	readonly parts: readonly Part[];
	readonly blanks: readonly Blank[];
	readonly boards: readonly BoardLayouts[];
	readonly needs: readonly Need[];
	readonly runs: readonly RunPlan[];
}
