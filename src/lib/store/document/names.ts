/*
 * A shared document is a heap of registers, each a short text in a named map. The maps stand by
 * name at the root of the document and need not be made: two devices that both begin to fill the
 * same list fill one, where two nested maps under one key would lose one of them.
 *
 * A name tells where the map belongs: `file.stock.materials[` is the list of boards, `@k3d9` what
 * the thing with that hidden mark holds, `@k3d9:slot` the same once it is a slot vent.
 */

/** The map everything hangs from. */
export const TOP = 'top';
/** The register in a thing of a list under which the thing itself stands. */
export const ITSELF = '^';

/** A field's name as a key: the signs that names of maps are made of stand as codes in it. */
export function keyOfField(field: string): string {
	const quoted = JSON.stringify(field).slice(1, -1);
	return quoted.replace(/[.:@^[#]/g, (sign) => `\\u00${sign.charCodeAt(0).toString(16)}`);
}

/** The field's name a key stands for; null for a key nobody here wrote. */
export function fieldOf(key: string): string | null {
	try {
		return JSON.parse(`"${key}"`) as string;
	} catch {
		return null;
	}
}

/** The map of what the object in this register holds, where it goes by this tag. */
export function insideOf(map: string, key: string, tag: string): string {
	const place = key === ITSELF ? map : `${map}.${key}`;
	return tag === '' ? place : `${place}:${tag}`;
}

/** The map from hidden marks to places of the list in this register. */
export const listIn = (map: string, key: string): string => `${insideOf(map, key, '')}[`;

/** The map of the ticks in this register. */
export const ticksIn = (map: string, key: string): string => `${insideOf(map, key, '')}#`;

/** The map of a thing in a list, by its hidden mark. */
export const thingOf = (mark: string): string => `@${mark}`;
