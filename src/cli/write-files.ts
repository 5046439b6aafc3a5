import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Usage } from './usage';

export interface OutFile {
	/** Below the folder, with forward slashes: 'layouts/sheet-01.svg'. */
	readonly name: string;
	readonly data: string | Uint8Array;
}

/**
 * Writes all files or none: each under a passing name first, then all are given their own. Drawings
 * of an earlier plan that this one does not have are cleared away, so that no old layout is cut by
 * mistake.
 */
export function writeFiles(folder: string, files: readonly OutFile[]): void {
	const passing = (file: OutFile) => join(folder, `${file.name}.${process.pid}.part`);
	const begun: OutFile[] = [];
	try {
		for (const file of files) {
			mkdirSync(dirname(join(folder, file.name)), { recursive: true });
			begun.push(file);
			writeFileSync(passing(file), file.data);
		}
		for (const file of files) renameSync(passing(file), join(folder, file.name));
		clearDrawings(folder, files);
	} catch (error) {
		for (const file of begun) rmSync(passing(file), { force: true });
		const reason = error instanceof Error ? error.message : String(error);
		throw new Usage(`The files cannot be written to ${folder}: ${reason}`);
	}
}

/** The folder of the layouts, which is ours alone. */
export const LAYOUTS = 'layouts';

function clearDrawings(folder: string, files: readonly OutFile[]): void {
	const kept = new Set(files.map((file) => file.name));
	const ours = /^(sheet|roll)-[\w.-]+\.svg$/;
	const layouts = join(folder, LAYOUTS);
	const found = existsSync(layouts) ? readdirSync(layouts) : [];
	for (const name of found) {
		if (ours.test(name) && !kept.has(`${LAYOUTS}/${name}`)) rmSync(join(layouts, name));
	}
}
