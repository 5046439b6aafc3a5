import { Color, SRGBColorSpace } from './three';
import type { Point3 } from '../../design';
import type { Tone } from './bodies';

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
			edge: mixed(sheet, wood, 0.3),
			metal: mixed(sheet, of('pencil'), 0.22),
			cloth: mixed(sheet, of('cloth'), 0.26),
			chosen: of('chalk-wash'),
		},
		ink: of('ink'),
		chalk: of('chalk'),
		pencil: of('pencil'),
		cut: mixed(sheet, wood, 0.7),
	};
}

/** Part of the way from one colour to another, in the steps the eye sees. */
function mixed(from: Color, to: Color, part: number): Color {
	const [a, b] = [from, to].map((c) => c.getRGB({ r: 0, g: 0, b: 0 }, SRGBColorSpace));
	if (!a || !b) return from;
	const at = (k: 'r' | 'g' | 'b'): number => a[k] + (b[k] - a[k]) * part;
	return new Color().setRGB(at('r'), at('g'), at('b'), SRGBColorSpace);
}

/** From the upper left, before the thing. */
const LIGHT: Point3 = { x: -0.42, y: -0.68, z: 0.6 };

/** A tone as bright as its side is turned to the light: flat shades, as if washed on paper. */
export function shaded(tone: Color, normal: Point3, inks: Inks): Color {
	const toLight = normal.x * LIGHT.x + normal.y * LIGHT.y + normal.z * LIGHT.z;
	return mixed(tone, inks.pencil, 0.16 * (1 - Math.max(0, toLight)));
}
