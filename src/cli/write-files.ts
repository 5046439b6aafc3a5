import {
	closeSync,
	existsSync,
	fsyncSync,
	mkdirSync,
	openSync,
	readdirSync,
	readFileSync,
	renameSync,
	rmSync,
	statSync,
	writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
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

/**
 * Sees before any work is done that files can be left in a folder: makes it, and tries one. Throws
 * `Usage`.
 */
export function tryFolder(folder: string): void {
	orSaid(folder, () => {
		mkdirSync(folder, { recursive: true });
		const trial = join(folder, `trial.${process.pid}.part`);
		writeFileSync(trial, '');
		rmSync(trial);
	});
}

/**
 * Writes all files, or none: each whole under a passing name first; then those of an earlier plan
 * are taken away, drawings that this one does not have among them; then the new ones get their own
 * names. Whatever moment it is stopped at, two plans never lie mixed. `isOurs` tells our drawings
 * from those of others by their text. Throws `Usage`.
 */
export function writeFiles(
	folder: string,
	files: readonly OutFile[],
	isOurs: (text: string) => boolean,
): void {
	const passing = ({ name }: OutFile) => join(folder, `${name}.${process.pid}.part`);
	const own = ({ name }: OutFile) => join(folder, name);
	orSaid(folder, () => {
		for (const file of files) mkdirSync(dirname(own(file)), { recursive: true });
		clearPassing(folder);
		inTheWay(files.map(own));
		try {
			for (const file of files) writeWhole(passing(file), file.data);
			for (const name of earlier(folder, files, isOurs))
				rmSync(join(folder, name), { force: true });
			for (const file of files) renameSync(passing(file), own(file));
		} catch (error) {
			for (const file of files) rmSync(passing(file), { force: true });
			throw error;
		}
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

/** On the disk, not only handed over: the names follow only then. */
function writeWhole(path: string, data: string | Uint8Array): void {
	writeFileSync(path, data);
	const file = openSync(path, 'r+');
	fsyncSync(file);
	closeSync(file);
}

/** Files of a plan made before, by the names of this one and as drawings our pen made. */
function earlier(
	folder: string,
	files: readonly OutFile[],
	isOurs: (text: string) => boolean,
): string[] {
	const ours = /^(sheet|roll)-[^/\\]+\.svg$/;
	const drawings = namesIn(join(folder, LAYOUTS)).filter(
		(name) => ours.test(name) && isOurs(readFileSync(join(folder, LAYOUTS, name), 'utf8')),
	);
	return [...files.map(({ name }) => name), ...drawings.map((name) => `${LAYOUTS}/${name}`)];
}

/** What a run that was stopped left behind. */
function clearPassing(folder: string): void {
	for (const place of [folder, join(folder, LAYOUTS)])
		for (const name of namesIn(place))
			if (/\.\d+\.part$/.test(name)) rmSync(join(place, name), { force: true });
}

function namesIn(folder: string): string[] {
	return existsSync(folder) ? readdirSync(folder) : [];
}
