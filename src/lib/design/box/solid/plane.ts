import type { Point3 } from './vec';

/** A face plane: inside is where n . p <= d; `n` has length 1. */
export interface Plane {
	readonly key: string;
	readonly n: Point3;
	readonly d: number;
}
