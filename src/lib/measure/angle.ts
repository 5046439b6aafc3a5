/** Angles are plain numbers of degrees. */

/** To a tenth of a degree, finer than any saw's scale: `21.8°`, `45°`. */
export function printAngle(degrees: number, decimal: '.' | ',' = '.'): string {
	const tenths = Math.round(degrees * 10) / 10;
	return `${String(tenths === 0 ? 0 : tenths).replace('.', decimal)}°`;
}

export function radians(degrees: number): number {
	return (degrees * Math.PI) / 180;
}

export function degrees(angle: number): number {
	return (angle * 180) / Math.PI;
}
