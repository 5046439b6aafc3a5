import { type OrthographicCamera, Spherical, Vector3 } from 'three';
import type { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import type { Point3 } from '../../design';
import type { Body } from './body';

/** A box round everything, mm. */
export interface Extent {
	readonly middle: Point3;
	/** From the middle to the farthest corner. */
	readonly reach: number;
}

/** Round all bodies, each as far from its place as they are drawn apart. */
export function extentOf(bodies: readonly Body[], apart: number): Extent {
	const all = bodies.flatMap((b) =>
		b.lines
			.flat()
			.map((p) => [p.x + b.away.x * apart, p.y + b.away.y * apart, p.z + b.away.z * apart]),
	);
	const side = (k: number): [number, number] =>
		all.reduce<[number, number]>(
			([low, high], p) => [Math.min(low, p[k] ?? 0), Math.max(high, p[k] ?? 0)],
			[Infinity, -Infinity],
		);
	const [x, y, z] =
		all.length > 0
			? [side(0), side(1), side(2)]
			: [[0, 1] as const, [0, 1] as const, [0, 1] as const];
	const middle = { x: (x[0] + x[1]) / 2, y: (y[0] + y[1]) / 2, z: (z[0] + z[1]) / 2 };
	return { middle, reach: Math.hypot(x[1] - x[0], y[1] - y[0], z[1] - z[0]) / 2 };
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
	{ middle, reach }: Extent,
	frame: { readonly width: number; readonly height: number },
): void {
	const [round, up] = [(look.round * Math.PI) / 180, (look.up * Math.PI) / 180];
	const far = Math.max(reach, 1) * 4;
	controls.target.set(middle.x, middle.y, middle.z);
	eye.position.set(
		middle.x + far * Math.sin(round) * Math.cos(up),
		middle.y - far * Math.cos(round) * Math.cos(up),
		middle.z + far * Math.sin(up),
	);
	eye.near = 0.1;
	eye.far = far * 2;
	eye.zoom = (Math.min(frame.width, frame.height) * 0.94) / (2 * Math.max(reach, 1));
	eye.updateProjectionMatrix();
	controls.update();
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
