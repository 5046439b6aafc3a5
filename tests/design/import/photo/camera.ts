import fc from 'fast-check';
import type { GreyPicture } from '../../../../src/lib/design/import/photo/find-paper';
import type { Point } from '../../../../src/lib/geometry/outline';

/*
 * Photographs that were computed: a camera at a known place looks at a sheet of A4 on a template,
 * through a lens with a known bend. So what is read out of the picture can be held against the
 * truth.
 */

export const A4 = { width: 210, height: 297 };
export const FRAME = { width: 800, height: 600 };

export interface Camera {
	/** Where a point of the template, mm from the paper's lower left corner, is seen, pixels. */
	readonly sees: (p: Point) => Point;
	/** The point of the template seen there. */
	readonly looksAt: (p: Point) => Point;
	/** The same, with another lens. */
	readonly with: (bend: number) => Camera;
}

interface Place {
	readonly lean: number; // degrees
	readonly roll: number;
	readonly far: number; // mm
	readonly bend: number;
}

const MIDDLE = { x: 100, y: 145 };
const FOCUS = 640; // pixels
const HALF = Math.hypot(FRAME.width, FRAME.height) / 2;
const rad = (degrees: number): number => (degrees * Math.PI) / 180;

export function camera(place: Place): Camera {
	const { lean, roll, far, bend } = place;
	const [c, s] = [Math.cos(rad(roll)), Math.sin(rad(roll))];
	const [cl, sl] = [Math.cos(rad(lean)), Math.sin(rad(lean))];
	const sees = (p: Point): Point => {
		const [dx, dy] = [p.x - MIDDLE.x, p.y - MIDDLE.y];
		const [x, y] = [c * dx - s * dy, s * dx + c * dy];
		const depth = far + y * sl;
		return bent({ x: (FOCUS * x) / depth, y: (-FOCUS * y * cl) / depth }, bend);
	};
	const looksAt = (p: Point): Point => {
		const { x: u, y: v } = straight(p, bend);
		const y = (-v * far) / (FOCUS * cl + v * sl);
		const x = (u * (far + y * sl)) / FOCUS;
		return { x: MIDDLE.x + c * x + s * y, y: MIDDLE.y - s * x + c * y };
	};
	return { sees, looksAt, with: (other) => camera({ ...place, bend: other }) };
}

/**
 * The picture's own point of one seen without a lens, from the middle: r' with r'(1 + k r'^2) = r.
 */
function bent(p: Point, bend: number): Point {
	const r = Math.hypot(p.x, p.y) / HALF;
	let own = r;
	for (let i = 0; i < 40; i++)
		own -= (own * (1 + bend * own * own) - r) / (1 + 3 * bend * own * own);
	const by = r === 0 ? 1 : own / r;
	return { x: FRAME.width / 2 + p.x * by, y: FRAME.height / 2 + p.y * by };
}

function straight(p: Point, bend: number): Point {
	const [x, y] = [p.x - FRAME.width / 2, p.y - FRAME.height / 2];
	const by = 1 + bend * (Math.hypot(x, y) / HALF) ** 2;
	return { x: x * by, y: y * by };
}

/** From above, up to 25 degrees off, turned a little, the whole template in the frame. */
export const cameras: fc.Arbitrary<Camera> = fc
	.record({
		lean: fc.integer({ min: -25, max: 25 }),
		roll: fc.integer({ min: -25, max: 25 }),
		far: fc.integer({ min: 800, max: 1000 }),
		bend: fc.integer({ min: -150, max: 100 }).map((n) => n / 1000),
	})
	.map(camera);

/** The picture in grey: dark floor, brown cardboard, white paper, a glint, and noise. */
export function greyOf(view: Camera, seed: number): GreyPicture {
	const { width, height } = FRAME;
	const dice = noise(seed);
	const shadeOf = (p: Point): number => {
		const at = view.looksAt(p);
		if (at.x > 0 && at.x < 210 && at.y > 0 && at.y < 297) return 225;
		if (at.x > 290 && at.x < 330 && at.y > 20 && at.y < 60) return 235; // a glint
		return at.x > -160 && at.x < 340 && at.y > -50 && at.y < 340 ? 135 : 70;
	};
	const grey = new Uint8Array(width * height);
	for (let y = 0; y < height; y++)
		for (let x = 0; x < width; x++) {
			let sum = 0;
			// Four looks a pixel: a sensor does not see a point.
			for (const [dx, dy] of QUARTERS) sum += shadeOf({ x: x + dx, y: y + dy });
			const light = 1 - 0.15 * (x / width); // the lamp stands to the left
			grey[y * width + x] = Math.max(0, Math.min(255, (sum / 4) * light + 6 * dice()));
		}
	return { width, height, shades: grey };
}

const QUARTERS = [
	[0.25, 0.25],
	[0.75, 0.25],
	[0.25, 0.75],
	[0.75, 0.75],
] as const;

/** From -1 to 1. */
function noise(seed: number): () => number {
	let at = seed >>> 0;
	return () => {
		at = (Math.imul(at, 1664525) + 1013904223) >>> 0;
		return at / 2 ** 31 - 1;
	};
}
