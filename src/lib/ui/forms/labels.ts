import { HELPS, LABELS } from './label-words';
import { OPTIONS } from './option-words';

/*
 * The words of the forms. A schema says 'Label: what it is.' or a sentence; where it says a sentence only, or nothing, the
 * label comes from here, else from the key itself.
 */

const UNITS: Readonly<Record<string, string>> = {
	turn: '°',
	tiltLimit: '°',
	angle: '°',
	seat: '°',
	nap: '°',
	density: 'kg/m³',
	massPerArea: 'kg/m²',
	percent: '%',
	spare: '%',
	shrink: '%',
	stretchAlong: '%',
	stretchAcross: '%',
	overlap: '%',
	mass: 'kg',
	hertz: 'Hz',
	fs: 'Hz',
	sd: 'cm²',
	xmax: 'mm',
};

const MINUTES = new Set([
	...['cut', 'cutMetre', 'setting', 'routedMetre', 'bondedSquareMetre', 'corner', 'relief'],
	...['panel', 'box', 'part', 'sheet'],
]);

/** The longest sentence that still serves as a label. */
const SHORT = 26;

export function labelOf(description: string, key: string): string {
	const colon = labelEnd(description);
	if (colon > 0) return description.slice(0, colon);
	const known = LABELS[key];
	if (known !== undefined) return known;
	if (description !== '' && description.length <= SHORT) return description;
	return sentence(key.replace(/([A-Z])/g, ' $1').toLowerCase());
}

export function helpOf(description: string, key: string): string {
	const colon = labelEnd(description);
	const text = colon > 0 ? description.slice(colon + 1).trim() : description || (HELPS[key] ?? '');
	const full = sentence(text);
	return full === '' || full.endsWith('.') ? full : `${full}.`;
}

/** Where a label ends in front of its help; a colon far into a sentence belongs to the sentence. */
function labelEnd(description: string): number {
	const colon = description.indexOf(':');
	return colon <= SHORT ? colon : -1;
}

/** 'one-way' -> 'one way'; words of our own where the key says too little. */
export function optionLabel(key: string, value: string): string {
	return OPTIONS[`${key}:${value}`] ?? OPTIONS[value] ?? value.replaceAll('-', ' ');
}

export function unitOf(description: string, key: string): string {
	if (description === '' && MINUTES.has(key)) return 'min';
	return UNITS[key] ?? '';
}

function sentence(text: string): string {
	return text === '' ? '' : text[0]!.toUpperCase() + text.slice(1);
}
