import type { Driver } from '../../../job';
import type { Place } from '../board';

/** What only a driver has: a magnet, and a side it lies on where it stands in a divider. */
type OfDrivers = 'magnet' | 'magnetHeight' | 'into';

/** What sits in a cut-out by its frame. */
export type Framed = Omit<Driver, 'data' | OfDrivers> & Partial<Pick<Driver, OfDrivers>>;

/** One of a row of drivers or passive radiators, in its place. */
export interface Seated<D extends Framed = Driver> {
	/** The list of the box it stands in. */
	readonly list: 'drivers' | 'radiators';
	readonly driver: D;
	readonly index: number;
	readonly name: string;
	readonly place: Place;
	/** Chamber number less one; -1 where a board stands behind it. */
	readonly room: number;
	/** Of one on a divider: the chamber its cone looks into, counted alike. */
	readonly front: number | null;
	/**
	 * How far the flange sits outside the face of the wall (a ring) or inside it (a routed seat,
	 * negative).
	 */
	readonly proud: number;
	readonly cutRadius: number;
}

/** A driver without a name goes by its number. */
export const framedName = (list: Seated['list'], name: string | undefined, i: number): string =>
	name ?? `${list === 'drivers' ? 'Driver' : 'Passive radiator'} ${i + 1}`;

/** What a cut-out is for. */
export const cutFor = ({ list }: Pick<Seated, 'list'>): string =>
	list === 'drivers' ? 'driver' : 'radiator';
