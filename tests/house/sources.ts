import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join, posix, relative } from 'node:path';
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

/** A line that takes something in from another file, or hands it on. */
export interface Import {
	/** The other file, as it is written there. */
	readonly from: string;
	/** What is taken, by the names it has there; a star for all, none for an import on demand. */
	readonly names: readonly string[];
	/** Nothing of it is left when the program runs. */
	readonly typesOnly: boolean;
	readonly handsOn: boolean;
	/** `import('...')`: only when it is needed. */
	readonly onDemand: boolean;
}

/** What a file imports or hands on, types included. */
export function importsOf({ text }: Pick<Source, 'text'>): Import[] {
	const code = text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '');
	const pattern =
		/(?:^|[\s;}])(import|export)\s+(type\s+)?(?:([\w*{}\s,$]+?)\s+from\s+)?['"]([^'"\n]+)['"]|\bimport\(\s*['"]([^'"\n]+)['"]\s*\)/g;
	return [...code.matchAll(pattern)].map(([, word, type, taken, from, onDemand]) => ({
		from: (from ?? onDemand) as string,
		names: namesIn(taken ?? ''),
		typesOnly: type !== undefined || /^\{(\s*type\s+\w+,?)+\s*\}$/.test(taken ?? ''),
		handsOn: word === 'export',
		onDemand: onDemand !== undefined,
	}));
}

/** `A, { type B, c as d }` takes default, B and c. */
function namesIn(taken: string): string[] {
	const braces = /\{([^}]*)\}/.exec(taken)?.[1] ?? '';
	const outside = taken.replace(/\{[^}]*\}/, '').replace(/,/g, ' ');
	const whole = outside.includes('*') ? ['*'] : outside.trim() === '' ? [] : ['default'];
	const listed = braces
		.split(',')
		.map((name) =>
			name
				.trim()
				.replace(/^type\s+/, '')
				.replace(/\s+as\s+\w+$/, ''),
		)
		.filter((name) => name !== '');
	return [...whole, ...listed];
}

/** The project's own file that an import names, from the project folder; null for a package. */
export function target(importer: string, name: string): string | null {
	const bare = name.split('?')[0] ?? '';
	const path = bare.startsWith('$lib/')
		? `src/lib/${bare.slice(5)}`
		: bare.startsWith('.')
			? posix.normalize(posix.join(posix.dirname(importer), bare))
			: null;
	if (path === null) return null;
	const ways = [path, `${path}.ts`, `${path}/index.ts`, `${path}.d.ts`];
	return ways.find((way) => isFile(way)) ?? path;
}

const known = new Map<string, boolean>();

function isFile(path: string): boolean {
	let found = known.get(path);
	if (found === undefined) {
		const whole = join(ROOT, path);
		known.set(path, (found = existsSync(whole) && statSync(whole).isFile()));
	}
	return found;
}
