import { type Air, airHolds } from '../solid';
import type { Framed, Seated } from '../mounted';
import { onDriver } from './driver';
import { boundsOf, mayTouch, type Obstacle } from '../board';
import { mm } from '../../../measure';

/** Basket and magnet are looked at in rings this far apart, and kept this far from everything. */
const STEP = mm(8);
const KEEP = mm(4);
const AROUND = 24;
/** No driver is this many steps deep or wide; one that is asked for is looked at in longer ones. */
const MOST = 200;

const stepFor = (way: number): number => Math.max(STEP, way / MOST);

/**
 * What the basket or the magnet of a driver runs into: names, each once. The walls are named 'a
 * wall'.
 */
export function clashes(
	one: Seated<Framed>,
	air: Air | null,
	obstacles: readonly Obstacle[],
): string[] {
	const points = bodyPoints(one);
	const { low, high } = boundsOf(points);
	const met = obstacles
		.filter((o) => mayTouch(o, low, high) && points.some((p) => o.has(p, KEEP)))
		.map((o) => o.name);
	if (air && points.some((p) => !airHolds(air, p))) met.unshift('a wall');
	return [...new Set(met)];
}

/** Points on the outside of the basket, from the inside of the wall on, and of the magnet. */
function bodyPoints(one: Seated<Framed>): ReturnType<typeof onDriver>[] {
	const { driver, cutRadius, place } = one;
	const magnet = (driver.magnet ?? 2 * cutRadius) / 2;
	const tall = Math.min(driver.magnetHeight ?? driver.depth / 3, driver.depth);
	const start = place.stack + one.proud + 4;
	const points: ReturnType<typeof onDriver>[] = [];
	for (let deep = start; deep < driver.depth; deep += stepFor(driver.depth)) {
		ring(
			one,
			deep,
			deep < driver.depth - tall ? basketAt(one, deep, tall, magnet) : magnet,
			points,
		);
	}
	for (let out = 0; out < magnet; out += stepFor(magnet)) ring(one, driver.depth, out, points);
	ring(one, driver.depth, magnet, points);
	return points;
}

/** The basket narrows from the cut-out to the magnet: taken as a cone. */
function basketAt(one: Seated<Framed>, deep: number, tall: number, magnet: number): number {
	const end = one.driver.depth - tall;
	const t = end <= 0 ? 1 : Math.min(1, Math.max(0, deep / end));
	return Math.max(magnet, one.cutRadius + (magnet - one.cutRadius) * t * t);
}

function ring(
	one: Seated<Framed>,
	deep: number,
	out: number,
	points: ReturnType<typeof onDriver>[],
): void {
	for (let i = 0; i < AROUND; i++)
		points.push(onDriver(one, deep, out, (2 * Math.PI * i) / AROUND));
}
