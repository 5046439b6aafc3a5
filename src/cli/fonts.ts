import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { Face, Fonts } from '../lib/print/faces';

/** The three faces as their packages hold them; the built command carries copies beside itself. */
export const FONT_FILES: Readonly<Record<Face, string>> = {
	regular:
		'@expo-google-fonts/ibm-plex-sans-condensed/400Regular/IBMPlexSansCondensed_400Regular.ttf',
	semibold:
		'@expo-google-fonts/ibm-plex-sans-condensed/600SemiBold/IBMPlexSansCondensed_600SemiBold.ttf',
	fallback: 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf',
};

export function loadFonts(): Fonts {
	return {
		regular: load('regular'),
		semibold: load('semibold'),
		fallback: load('fallback'),
	};
}

function load(face: Face): Uint8Array {
	const beside = fileURLToPath(new URL(`./fonts/${face}.ttf`, import.meta.url));
	if (existsSync(beside)) return readFileSync(beside);
	return readFileSync(createRequire(import.meta.url).resolve(FONT_FILES[face]));
}
