import { existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { swapSets } from './set-swap';
import { settle } from './settle';
import { Usage } from './usage';

export interface OutFile {
	/** Below the folder, with forward slashes: 'layouts/sheet-01.svg'. */
	readonly name: string;
	readonly data: string | Uint8Array;
	/** What on its pages could not be drawn. */
	readonly undrawn?: readonly string[];
}

/** The folder of the layouts, within the one written to. */
export const LAYOUTS = 'layouts';
/** The folder of the files for machines. */
export const MACHINE = 'machine';
/** Which files of a folder are ours: one of them, so that it changes with them. */
const LIST = '.kerf-and-nap-set.json';

/**
 * Sees before any work is done that files can be left in a folder: makes it, finishes what a run
 * before left unfinished, and tries one file. Throws `Usage`.
 */
export function tryFolder(folder: string): void {
	orSaid(folder, () => {
		mkdirSync(folder, { recursive: true });
		settle(folder);
		const trial = join(folder, '.kerf-and-nap-trial');
		writeFileSync(trial, '');
		rmSync(trial);
	});
}

/**
 * Writes all files, or none: whatever moment it is stopped at, the names lead to all files of the
 * plan before or to all of this one. Files that only the plan before had go with it; nothing that
 * neither plan names is touched. Throws `Usage`.
 */
export function writeFiles(folder: string, files: readonly OutFile[]): void {
	const list = JSON.stringify({ files: files.map(({ name }) => name) }, null, '\t') + '\n';
	orSaid(folder, () => {
		mkdirSync(folder, { recursive: true });
		settle(folder);
		inTheWay(files.map(({ name }) => join(folder, name)));
		swapSets(folder, earlier(folder), [...files, { name: LIST, data: list }]);
	});
}

/** What the outside world refuses, as the person is told it. */
function orSaid(folder: string, work: () => void): void {
	try {
		work();
	} catch (error) {
		const reason = error instanceof Error ? error.message : String(error);
		throw new Usage(`The files cannot be written to ${folder}: ${reason}`);
	}
}

/** A folder that has the name of a file is seen before anything is changed. */
function inTheWay(paths: readonly string[]): void {
	const taken = paths.find((path) => existsSync(path) && statSync(path).isDirectory());
	if (taken) throw new Error(`${taken} is a folder; move it away or give another --out.`);
}

/** A name the planner gives: anything else in a list is not its own, and is left alone. */
const OURS = /^(?:(?:layouts|machine)\/)?[^./\\][^/\\]*\.(?:pdf|csv|json|svg|dxf|txt)$/;

/** The files of the plan before, by its list; one that cannot be read names none. */
function earlier(folder: string): string[] {
	const path = join(folder, LIST);
	if (!existsSync(path)) return [];
	try {
		const { files } = JSON.parse(readFileSync(path, 'utf8')) as { files?: unknown };
		const names = Array.isArray(files) ? files.filter((name) => typeof name === 'string') : [];
		return names.filter((name) => OURS.test(name) && isFile(join(folder, name)));
	} catch {
		return [];
	}
}

const isFile = (path: string): boolean =>
	statSync(path, { throwIfNoEntry: false })?.isFile() === true;
