import {
	closeSync,
	copyFileSync,
	existsSync,
	fsyncSync,
	linkSync,
	lstatSync,
	mkdirSync,
	openSync,
	renameSync,
	symlinkSync,
	writeFileSync,
} from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { BY, DOOR, keptOnDisk, replaceInTurn, settle, WORK } from './settle';

/*
 * Many files changed at one stroke.
 *
 * A name is given to another file by one rename, which happens whole or not at all; many names take
 * many renames, and between two of them files of two plans would lie side by side. So the names
 * are first made links that all lead through one door, the link `now`, to the files they had
 * already: nothing is seen of that. Then the door is turned from the old set to the new one, by one
 * rename. Then each link makes way for the file it leads to: nothing is seen of that either, and
 * what stays is plain files, which can be carried off on a stick as they are. Stopped at any of
 * these steps, every name leads to the old set or every name leads to the new one; the next run
 * sees the door and finishes. A name that only one of the sets has leads nowhere while the door
 * stands at the other.
 *
 * Where links are not allowed (Windows, without a right of its own) the old names are taken away
 * before the new ones are given: never two plans mixed, but a stop in between leaves names without
 * a file until the next run, which gives them the new ones.
 */

interface NamedFile {
	readonly name: string;
	readonly data: string | Uint8Array;
}

/**
 * Leaves a folder with the files given in place of those of the names given. Throws what the
 * outside world throws, and leaves the names with the files they had.
 */
export function swapSets(
	folder: string,
	earlier: readonly string[],
	files: readonly NamedFile[],
	makeLink = symlinkSync,
): void {
	const work = join(folder, WORK);
	mkdirSync(work);
	try {
		writeFileSync(join(work, BY), String(process.pid));
		for (const { name, data } of files) writeWhole(join(work, 'new', name), data);
		const names = [...new Set([...earlier, ...files.map(({ name }) => name)])];
		for (const name of names) mkdirSync(dirname(join(folder, name)), { recursive: true });
		if (hasDoor(work, makeLink)) turn(folder, names);
		else replaceInTurn(work, names);
	} finally {
		settle(folder);
	}
}

function hasDoor(work: string, makeLink: typeof symlinkSync): boolean {
	try {
		makeLink('old', join(work, DOOR));
		return true;
	} catch {
		return false;
	}
}

function turn(folder: string, names: readonly string[]): void {
	const work = join(folder, WORK);
	for (const name of names) throughDoor(folder, name);
	keptOnDisk(folder);
	const turned = join(work, 'turned');
	symlinkSync('new', turned);
	renameSync(turned, join(work, DOOR));
	keptOnDisk(work);
}

/** The name becomes a link through the door to the file it has. */
function throughDoor(folder: string, name: string): void {
	const work = join(folder, WORK);
	const own = join(folder, name);
	if (existsSync(own)) alsoAs(join(work, 'old', name), own);
	const link = join(work, 'link');
	symlinkSync(relative(dirname(own), join(work, DOOR, name)), link);
	renameSync(link, own);
}

/** The same file under a second name; a copy where it is a link or the disk has no such thing. */
function alsoAs(second: string, path: string): void {
	mkdirSync(dirname(second), { recursive: true });
	try {
		if (lstatSync(path).isSymbolicLink()) copyFileSync(path, second);
		else linkSync(path, second);
	} catch {
		copyFileSync(path, second);
	}
}

/** On the disk, not only handed over: the names follow only then. */
function writeWhole(path: string, data: string | Uint8Array): void {
	mkdirSync(dirname(path), { recursive: true });
	const file = openSync(path, 'w');
	try {
		writeFileSync(file, data);
		fsyncSync(file);
	} finally {
		closeSync(file);
	}
}
