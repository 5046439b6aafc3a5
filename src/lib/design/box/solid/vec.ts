/**
 * A point or a direction in the box, ticks: x to the right along the width, y to the back, z up;
 * right-handed, the origin at the lower left front corner of the outside. Fractions of a tick on
 * the way through a formula.
 */
export interface Point3 {
	readonly x: number;
	readonly y: number;
	readonly z: number;
}

export const p3 = (x: number, y: number, z: number): Point3 => ({ x, y, z });
export const add3 = (a: Point3, b: Point3): Point3 => p3(a.x + b.x, a.y + b.y, a.z + b.z);
export const sub3 = (a: Point3, b: Point3): Point3 => p3(a.x - b.x, a.y - b.y, a.z - b.z);
export const scale3 = (a: Point3, k: number): Point3 => p3(a.x * k, a.y * k, a.z * k);
export const dot3 = (a: Point3, b: Point3): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const cross3 = (a: Point3, b: Point3): Point3 =>
	p3(a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x);
export const length3 = (a: Point3): number => Math.sqrt(dot3(a, a));
export const middle3 = (a: Point3, b: Point3): Point3 => scale3(add3(a, b), 0.5);

export function unit3(a: Point3): Point3 {
	const n = length3(a);
	if (n === 0) throw new Error('bug: no direction in a vector of no length');
	return scale3(a, 1 / n);
}

/** Degrees of the angle between two directions, 0 to 180. */
export function angleBetween(a: Point3, b: Point3): number {
	return (Math.atan2(length3(cross3(a, b)), dot3(a, b)) * 180) / Math.PI;
}
