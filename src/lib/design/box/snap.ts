import type { Outline, Point } from '../../geometry/outline';
import { ticks, type Length } from '../../measure/length';

/** To the nearest tick, for what is shown. */
export const near = (n: number): Length => ticks(Math.round(n));

export const grid = (points: readonly Point[]): Outline =>
	points.map((p) => ({ x: Math.round(p.x), y: Math.round(p.y) }));

export const finite = (n: number): number => (Number.isFinite(n) ? n : 0);
