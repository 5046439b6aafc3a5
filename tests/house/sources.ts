import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '');

export interface Source {
	/** From the project folder, with forward slashes. */
	readonly path: string;
	readonly text: string;
}

/** Every source file below these folders. */
export function sources(...folders: readonly string[]): Source[] {
	return folders.flatMap((folder) =>
		readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
			.filter((entry) => entry.isFile() && /\.(ts|js|svelte|css|html)$/.test(entry.name))
			.map((entry) => {
				const file = join(entry.parentPath, entry.name);
				return {
					path: relative(ROOT, file).replaceAll('\\', '/'),
					text: readFileSync(file, 'utf8'),
				};
			}),
	);
}

/** What a file imports, types included, as it is written there. */
export function importsOf({ text }: Source): string[] {
	const code = text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '');
	const pattern =
		/(?:^|[\s;}])(?:import|export)\s+(?:type\s+)?(?:[\w*{}\s,$]+?\s+from\s+)?['"]([^'"\n]+)['"]|\bimport\(\s*['"]([^'"\n]+)['"]\s*\)/g;
	return [...code.matchAll(pattern)].map((found) => (found[1] ?? found[2])!);
}
