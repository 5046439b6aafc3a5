import { toMm } from '../../measure';
import { running, runningDepth } from './running';
import type { Mark, View } from '../drawing';

/** Distance of the running line from the work, mm on paper. */
const OFFSET = 3;

interface Place {
	/** Ticks from the lower left corner of the work. */
	readonly at: number;
	readonly text: string;
}

/** Running figures along the lower and the left edge of a sheet, a roll or a blank. */
export interface RunningPlaces {
	readonly x: readonly Place[];
	readonly y: readonly Place[];
}

/** What the figures take to the left of the work and below it, mm on paper. */
export function roomOf(places: RunningPlaces): { readonly left: number; readonly below: number } {
	const depth = (list: readonly Place[]): number =>
		runningDepth(
			OFFSET,
			list.map((p) => p.text),
		) + 1;
	return { left: depth(places.y), below: depth(places.x) };
}

type Stretch = readonly [from: number, to: number];

/** The figures; `room` is the stretch of each edge that they may spread over, mm on paper. */
export function runningAxes(
	places: RunningPlaces,
	view: View,
	room?: { readonly x: Stretch; readonly y: Stretch },
): Mark[] {
	return [
		...running({
			axis: 'x',
			datum: view.x,
			edge: view.y,
			offset: OFFSET,
			places: places.x.map((p) => ({ ...p, at: view.x + toMm(p.at) * view.scale })),
			...(room && { room: room.x }),
		}),
		...running({
			axis: 'y',
			datum: view.y,
			edge: view.x,
			offset: OFFSET,
			places: places.y.map((p) => ({ ...p, at: view.y - toMm(p.at) * view.scale })),
			...(room && { room: room.y }),
		}),
	];
}
