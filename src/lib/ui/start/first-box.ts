import type { JobFile } from '../../job';
import type { UsualDriver } from './usual-drivers';

/** What the first page asks of a box; lengths in mm. */
export interface BoxAsked {
	readonly space: { readonly width: number; readonly height: number; readonly depth: number };
	/** Depth at the top, where the back leans; null where it is straight. */
	readonly depthTop: number | null;
	readonly driver: UsualDriver | null;
	readonly count: number;
	readonly litres: number;
	readonly material: string;
}

type BoxFile = NonNullable<JobFile['boxes']>[number];

/** Left free on every side, and once more for cloth: the box may grow into it. */
const CLEAR = 5;
const CLOTH = 5;
/** Between the frames of drivers in a row. */
const BETWEEN = 20;

/** A box that stands in the space, its width worked out for the volume. */
export function firstBox(asked: BoxAsked): BoxFile {
	const { space, depthTop, driver, count } = asked;
	const off = CLEAR + CLOTH;
	const height = space.height - off;
	const bottom = space.depth - off;
	const size = { width: space.width - 2 * off, height };
	const shape =
		depthTop === null
			? { kind: 'plain' as const, ...size, depth: bottom }
			: {
					...{ kind: 'slanted' as const, ...size, face: 'back' as const },
					lean: { by: 'depths' as const, bottom, top: depthTop - off },
				};
	return {
		...{ id: 'box-1', name: 'Box 1', material: asked.material, shape },
		target: { litres: asked.litres, solve: 'width' },
		drivers: driver ? [driverOf(driver, count)] : [],
		space: { ...space, depthTop, clearance: CLEAR },
	};
}

function driverOf(driver: UsualDriver, count: number): NonNullable<BoxFile['drivers']>[number] {
	const { cutout, frame, depth, displacement, mass } = driver;
	return {
		name: 'Driver',
		cutout: { kind: 'round', diameter: cutout },
		...{ frame, depth, displacement, mass, count },
		...(count > 1 ? { pitch: frame + BETWEEN } : {}),
	};
}

/**
 * Volume for a wanted Qtc of a closed box, litres: Vas / ((Qtc / Qts)² − 1), Small 1972. Null where
 * the driver has that Q or more without a box.
 */
export function litresForQ(wanted: number, qts: number, vas: number): number | null {
	const stiffer = (wanted / qts) ** 2 - 1;
	return stiffer > 0 ? vas / stiffer : null;
}
