import { type OrbitControls, type OrthographicCamera, Spherical, Vector3 } from './three';
import { add3, type Point3, scale3 } from '../../design';
import type { Body } from './bodies';

/** A box round everything, mm. */
export interface Spread {
	readonly middle: Point3;
	/** From the middle to the farthest corner. */
	readonly reach: number;
	readonly points: readonly Point3[];
}

/** Round all bodies, each as far from its place as they are drawn apart. */
export function spreadOf(bodies: readonly Pick<Body, 'lines' | 'away'>[], apart: number): Spread {
	const points = bodies.flatMap((b) => b.lines.flat().map((p) => add3(p, scale3(b.away, apart))));
	const side = (axis: 'x' | 'y' | 'z'): { middle: number; size: number } => {
		let [low, high] = [Infinity, -Infinity];
		for (const p of points) [low, high] = [Math.min(low, p[axis]), Math.max(high, p[axis])];
		return low > high ? { middle: 0, size: 1 } : { middle: (low + high) / 2, size: high - low };
	};
	const [x, y, z] = [side('x'), side('y'), side('z')];
	return {
		middle: { x: x.middle, y: y.middle, z: z.middle },
		reach: Math.max(1, Math.hypot(x.size, y.size, z.size) / 2),
		points,
	};
}

/** Where one looks from: degrees to the right of the front, and degrees up. */
export interface Look {
	readonly round: number;
	readonly up: number;
}

export const LOOKS = {
	corner: { round: 32, up: 24 },
	front: { round: 0, up: 0 },
	right: { round: 90, up: 0 },
	above: { round: 0, up: 89.9 },
} as const satisfies Record<string, Look>;

/** Turns the eye to a look and brings all of it into the frame. */
export function lookAt(
	eye: OrthographicCamera,
	controls: OrbitControls,
	look: Look,
	{ middle, reach, points }: Spread,
	frame: { readonly width: number; readonly height: number },
): void {
	const [round, up] = [(look.round * Math.PI) / 180, (look.up * Math.PI) / 180];
	const far = reach * 4;
	controls.target.set(middle.x, middle.y, middle.z);
	eye.position.set(
		middle.x + far * Math.sin(round) * Math.cos(up),
		middle.y - far * Math.cos(round) * Math.cos(up),
		middle.z + far * Math.sin(up),
	);
	eye.near = 0.1;
	eye.far = far * 2;
	controls.update();
	eye.updateMatrixWorld();
	const seen = points.map((p) => new Vector3(p.x, p.y, p.z).applyMatrix4(eye.matrixWorldInverse));
	const most = (of: (p: Vector3) => number): number =>
		Math.max(
			1,
			seen.reduce((most, p) => Math.max(most, Math.abs(of(p))), 0),
		);
	const fits = Math.min(frame.width / most((p) => p.x), frame.height / most((p) => p.y));
	eye.zoom = (fits / 2) * 0.92;
	eye.updateProjectionMatrix();
}

/** Turns the eye round what it looks at, as a drag does; degrees to the right and up. */
export function turnBy(eye: OrthographicCamera, controls: OrbitControls, by: Look): void {
	const from = eye.position.clone().sub(controls.target);
	// the controls turn about the eye's own up, which is z here; a spherical place counts from y
	const seat = new Spherical().setFromVector3(new Vector3(from.x, from.z, -from.y));
	seat.theta += (by.round * Math.PI) / 180;
	seat.phi -= (by.up * Math.PI) / 180;
	seat.makeSafe();
	const to = new Vector3().setFromSpherical(seat);
	eye.position.set(to.x, -to.z, to.y).add(controls.target);
	controls.update();
}

/** Comes nearer or goes away, as a wheel does. */
export function zoomBy(eye: OrthographicCamera, controls: OrbitControls, times: number): void {
	eye.zoom = Math.min(Math.max(eye.zoom * times, 0.02), 200);
	eye.updateProjectionMatrix();
	controls.update();
}
