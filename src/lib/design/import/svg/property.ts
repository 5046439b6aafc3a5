import type { XmlElement } from './xml';

/** How an element looks up what is said of it. */
export interface Props {
	/** What its style says, or else its attribute of that name (CSS cascade). */
	readonly of: (name: string) => string | undefined;
	/** What its style alone says. */
	readonly styled: (name: string) => string | undefined;
	/** Names its style holds. */
	readonly names: readonly string[];
}

export function propsOf(e: XmlElement): Props {
	const style = declarations(e.attributes.get('style') ?? '');
	const styled = (name: string): string | undefined => style.get(name);
	return {
		of: (name) => styled(name) ?? e.attributes.get(name)?.trim(),
		styled,
		names: [...style.keys()],
	};
}

/** `name: value` by `name: value`; the last one of a name holds. */
function declarations(style: string): ReadonlyMap<string, string> {
	const found = new Map<string, string>();
	if (style === '') return found;
	for (const one of withoutComments(style).split(';')) {
		const colon = one.indexOf(':');
		if (colon < 0) continue;
		const value = one.slice(colon + 1).replace(/!\s*important\s*$/i, '');
		found.set(one.slice(0, colon).trim().toLowerCase(), value.trim());
	}
	return found;
}

function withoutComments(style: string): string {
	const kept: string[] = [];
	let at = 0;
	for (;;) {
		const from = style.indexOf('/*', at);
		kept.push(style.slice(at, from < 0 ? undefined : from));
		const to = from < 0 ? -1 : style.indexOf('*/', from + 2);
		if (to < 0) return kept.join('');
		at = to + 2;
	}
}

/**
 * Absolute units in the format's own unit, the pixel of 1/96 in (CSS Values and Units Module Level
 * 3, section 5.2).
 */
const PIXELS: Readonly<Record<string, number>> = {
	'': 1,
	px: 1,
	in: 96,
	cm: 96 / 2.54,
	mm: 96 / 25.4,
	q: 96 / 101.6,
	pt: 96 / 72,
	pc: 16,
};

export const PIXEL_MM = 25.4 / 96;

const NUMBER = '[-+]?(?:\\d+\\.?\\d*|\\.\\d+)(?:e[-+]?\\d+)?';
const WITH_UNIT = new RegExp(`^(${NUMBER})\\s*([a-z%]*)$`, 'i');

/** A length with the unit it was written in. */
export function lengthIn(text: string): { readonly pixels: number; readonly unit: string } | null {
	const found = WITH_UNIT.exec(text.trim());
	const unit = (found?.[2] ?? '').toLowerCase();
	const one = found ? PIXELS[unit] : undefined;
	const pixels = Number(found?.[1]) * (one ?? NaN);
	return Number.isFinite(pixels) ? { pixels, unit } : null;
}

/** A length in the format's own unit, parts of a hundred taken of `whole`; null when it is none. */
export function pixelsOf(text: string, whole: number | null): number | null {
	const found = WITH_UNIT.exec(text.trim());
	if (found?.[2] !== '%') return lengthIn(text)?.pixels ?? null;
	const share = whole === null ? NaN : (Number(found[1]) / 100) * whole;
	return Number.isFinite(share) ? share : null;
}

/** Numbers parted by spaces, commas or signs alone; null when anything else is there. */
export function numbersIn(text: string): number[] | null {
	const one = new RegExp(`\\s*,?\\s*(${NUMBER})`, 'iy');
	const numbers: number[] = [];
	const whole = text.trimEnd();
	while (one.lastIndex < whole.length) {
		const found = one.exec(whole);
		if (!found || !Number.isFinite(Number(found[1]))) return null;
		numbers.push(Number(found[1]));
	}
	return numbers;
}
