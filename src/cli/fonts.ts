import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import files from './font-files.json';
import type { Face, Fonts } from '../lib/print';

/** The three faces as their packages hold them; the built command carries copies beside itself. */
const FILES: Readonly<Record<Face, string>> = files;

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
	return readFileSync(createRequire(import.meta.url).resolve(FILES[face]));
}
