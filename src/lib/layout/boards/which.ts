/**
 * Which laid-out sheet of a plan is meant: its material and its place among that material's
 * layouts.
 */
export interface Which {
	readonly material: string;
	readonly index: number;
}
