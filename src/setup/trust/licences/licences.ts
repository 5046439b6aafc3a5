import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../../tool.js';

/** One installed package and what its own description says of its licence; '' for nothing. */
export interface Licensed {
	readonly name: string;
	readonly version: string;
	readonly licence: string;
}

/**
 * What may be used, changed and passed on with no more than its notice kept: marks of the SPDX
 * licence list (spdx.org/licenses). MPL-2.0 asks that changed files of its own stay open; ours only
 * use it.
 */
export const PERMITTED: ReadonlySet<string> = new Set([
	...[
		'MIT',
		'MIT-0',
		'ISC',
		'BSD-2-Clause',
		'BSD-3-Clause',
		'0BSD',
		'Apache-2.0',
		'CC0-1.0',
		'Unlicense',
	],
	...['BlueOak-1.0.0', 'Python-2.0', 'CC-BY-4.0', 'OFL-1.1', 'MPL-2.0', 'Zlib', 'BSL-1.0'],
]);

/** Packages whose own word is not on the list, and why they may be used all the same. */
export const LOOKED_AT: ReadonlyMap<string, string> = new Map([
	[
		'dejavu-fonts-ttf',
		'its LICENSE: the Bitstream Vera and Arev terms, free to use, embed and pass on',
	],
	[
		'@img/sharp-libvips-linux-x64',
		'LGPL-3.0-or-later: fetched by a package of the tests, for pictures nobody asks it for; no part of what is shipped',
	],
]);

export const mayBeUsed = ({ name, licence }: Licensed): boolean =>
	isPermitted(licence) || LOOKED_AT.has(name);

/** Every package below `folder` ('node_modules'), packages within packages too. */
export function licencesIn(folder: string): Licensed[] {
	const found = packagesIn(folder).flatMap((place) => {
		const own = read(place);
		const nested = join(place, 'node_modules');
		return [...(own ? [own] : []), ...(existsSync(nested) ? licencesIn(nested) : [])];
	});
	const byName = (a: Licensed, b: Licensed): number =>
		`${a.name}@${a.version}` < `${b.name}@${b.version}` ? -1 : 1;
	return found.sort(byName);
}

export const dependencies = (): Licensed[] => licencesIn(join(ROOT, 'node_modules'));

function packagesIn(folder: string): string[] {
	const names = readdirSync(folder).filter((name) => !name.startsWith('.'));
	return names.flatMap((name) =>
		name.startsWith('@')
			? readdirSync(join(folder, name)).map((own) => join(folder, name, own))
			: [join(folder, name)],
	);
}

function read(place: string): Licensed | null {
	const file = join(place, 'package.json');
	if (!existsSync(file)) return null;
	const { name, version, license, licenses } = JSON.parse(readFileSync(file, 'utf8')) as Named;
	const listed = Array.isArray(licenses) ? licenses.map(typeOf).join(' OR ') : typeOf(licenses);
	return { name: name ?? place, version: version ?? '', licence: typeOf(license) || listed };
}

interface Named {
	readonly name?: string;
	readonly version?: string;
	readonly license?: unknown;
	readonly licenses?: unknown;
}

/** Old packages give a record, or a list of them. */
function typeOf(said: unknown): string {
	if (typeof said === 'string') return said;
	const type = typeof said === 'object' && said !== null && 'type' in said ? said.type : '';
	return typeof type === 'string' ? type : '';
}

/** An expression of the SPDX kind: with OR one part is enough, with AND all are asked. */
export function isPermitted(expression: string): boolean {
	const text = expression.trim().replace(/^\((.*)\)$/, '$1');
	if (text.includes(' OR ')) return text.split(' OR ').some(isPermitted);
	if (text.includes(' AND ')) return text.split(' AND ').every(isPermitted);
	return PERMITTED.has(text);
}
