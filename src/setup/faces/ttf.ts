/**
 * Reads from a TrueType file what text measuring needs: the advance width of every character up to
 * U+FFFF. Tables `head`, `hhea`, `hmtx` and a format 4 `cmap`, by the open font format (ISO/IEC
 * 14496-22).
 */
export interface Advances {
	readonly unitsPerEm: number;
	/** Code point -> advance width in font units; a character the font lacks is absent. */
	readonly width: ReadonlyMap<number, number>;
}

export function readAdvances(bytes: Uint8Array): Advances {
	const data = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
	const tables = readTables(data);
	const unitsPerEm = data.getUint16(tables('head') + 18);
	const metrics = data.getUint16(tables('hhea') + 34);
	const hmtx = tables('hmtx');
	const advance = (glyph: number) => data.getUint16(hmtx + 4 * Math.min(glyph, metrics - 1));
	const width = new Map<number, number>();
	for (const [code, glyph] of readGlyphs(data, format4(data, tables('cmap'))))
		width.set(code, advance(glyph));
	return { unitsPerEm, width };
}

function readTables(data: DataView): (tag: string) => number {
	const at = new Map<string, number>();
	for (let i = 0; i < data.getUint16(4); i++) {
		const entry = 12 + 16 * i;
		const tag = String.fromCharCode(...[0, 1, 2, 3].map((k) => data.getUint8(entry + k)));
		at.set(tag, data.getUint32(entry + 8));
	}
	return (tag) => {
		const found = at.get(tag);
		if (found === undefined) throw new Error(`bug: the font has no ${tag} table`);
		return found;
	};
}

function format4(data: DataView, cmap: number): number {
	for (let i = 0; i < data.getUint16(cmap + 2); i++) {
		const table = cmap + data.getUint32(cmap + 4 + 8 * i + 4);
		if (data.getUint16(table) === 4) return table;
	}
	throw new Error('bug: the font has no format 4 character map');
}

function* readGlyphs(data: DataView, table: number): Generator<readonly [number, number]> {
	const double = data.getUint16(table + 6); // twice the number of segments
	const ends = table + 14;
	const starts = ends + double + 2;
	for (let s = 0; s < double; s += 2) {
		const delta = data.getUint16(starts + double + s);
		const rangeAt = starts + 2 * double + s;
		const range = data.getUint16(rangeAt);
		const start = data.getUint16(starts + s);
		for (let code = start; code <= data.getUint16(ends + s) && code !== 0xffff; code++) {
			const glyph = range === 0 ? code : data.getUint16(rangeAt + range + 2 * (code - start));
			if (glyph !== 0) {
				const mapped = (glyph + delta) & 0xffff;
				if (mapped !== 0) yield [code, mapped];
			}
		}
	}
}
