/*
 * Files of the open drawing exchange format, as text: a line with a code, then a line with its
 * value.
 */

export type Pair = string | number;

/** One entity, on layer 0. */
export const entity = (type: string, ...pairs: Pair[]): Pair[] => [0, type, 8, '0', ...pairs];

/** A closed polyline; the third figure of a corner is the bulge of the edge after it. */
export const polyline = (...corners: (readonly [x: number, y: number, bulge?: number])[]): Pair[] =>
	entity(
		'LWPOLYLINE',
		...[90, corners.length, 70, 1],
		...corners.flatMap(([x, y, bulge]) => [10, x, 20, y, ...(bulge ? [42, bulge] : [])]),
	);

export const section = (name: string, of: readonly Pair[]): Pair[] => [
	...[0, 'SECTION', 2, name],
	...of,
	...[0, 'ENDSEC'],
];

export const dxfFile = (...sections: readonly Pair[][]): string =>
	[...sections.flat(), 0, 'EOF', ''].join('\n');
