import { Color } from 'three';
import type { Point3 } from '../../design';
import type { Tone } from './body';

/** The colours of the look, as the page has them now: by day or by night. */
export interface Inks {
	readonly tones: Readonly<Record<Tone | 'chosen', Color>>;
	readonly ink: Color;
	readonly chalk: Color;
	readonly pencil: Color;
	/** What is seen where a board is cut through. */
	readonly cut: Color;
}

/** Reads them from the style sheet, so that the view changes with the page. */
export function inksOf(page: Element): Inks {
	const style = getComputedStyle(page);
	const of = (name: string): Color =>
		new Color(style.getPropertyValue(`--${name}`).trim() || '#888');
	const [sheet, wood] = [of('sheet'), of('wood')];
	return {
		tones: {
			face: sheet,
			edge: sheet.clone().lerp(wood, 0.35),
			metal: sheet.clone().lerp(of('pencil'), 0.3),
			cloth: sheet.clone().lerp(of('cloth'), 0.4),
			chosen: of('chalk-wash'),
		},
		ink: of('ink'),
		chalk: of('chalk'),
		pencil: of('pencil'),
		cut: wood,
	};
}

/** From the upper left, before the thing. */
const LIGHT: Point3 = { x: -0.42, y: -0.68, z: 0.6 };

/** A tone as bright as its side is turned to the light: flat shades, as if washed on paper. */
export function shaded(tone: Color, normal: Point3, inks: Inks): Color {
	const toLight = normal.x * LIGHT.x + normal.y * LIGHT.y + normal.z * LIGHT.z;
	return tone.clone().lerp(inks.pencil, 0.13 * (1 - Math.max(0, toLight)));
}
