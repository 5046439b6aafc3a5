import { createInterface } from 'node:readline';
import { createReadStream } from 'node:fs';
import { parseText, type Problem } from '../../lib/job';
import { readStdin, readText } from '../input';
import { answerNest, type EffortLimit } from './effort';
import { readNest } from './problem';
import { parse, seconds, wholeNumber } from '../options';
import { nestTogether, ownProcess } from './together';
import { Usage } from '../usage';
import { problemJson, problemText } from '../print-problems';

/** More processes than this a machine for one person has no cores for. */
const MOST_WORKERS = 64;

/** `nest`: a plain problem in, its layout out. Returns the exit code. */
export async function nestCommand(args: readonly string[]): Promise<number> {
	const { values, file } = parse(args, {
		effort: { type: 'string' },
		seconds: { type: 'string' },
		seed: { type: 'string' },
		lines: { type: 'boolean' },
		workers: { type: 'string' },
	});
	const patience: EffortLimit = {
		seed: wholeNumber(values, 'seed', 0xffffffff) ?? 1,
		effort: wholeNumber(values, 'effort', 1e12),
		seconds: seconds(values),
	};
	const from = file === '-' ? undefined : file;
	const workers = wholeNumber(values, 'workers', MOST_WORKERS) ?? 1;
	if (values['lines'] && workers > 1)
		throw new Usage('--workers is for one problem: leave out --lines.');
	if (values['lines']) return everyLine(from, patience);
	const text = from === undefined ? await readStdin() : readText(from);
	const answer = workers > 1 ? await solveTogether(text, patience, workers) : solve(text, patience);
	if ('problems' in answer) {
		process.stderr.write(answer.problems.map(problemText).join(''));
		return 1;
	}
	process.stdout.write(JSON.stringify(answer.answer, null, 2) + '\n');
	return 0;
}

type Solved = { readonly answer: object } | { readonly problems: readonly Problem[] };

function solve(text: string, patience: EffortLimit): Solved {
	const read = parseText(text);
	if ('problems' in read) return read;
	const nest = readNest(read.file);
	if ('problems' in nest) return nest;
	const answer = answerNest(nest.nest, patience);
	const noted = read.twice.map(problemJson);
	return { answer: noted.length > 0 ? { ...answer, problems: noted } : answer };
}

/** A faulty problem is refused here, before any process is started. */
async function solveTogether(
	text: string,
	patience: EffortLimit,
	workers: number,
): Promise<Solved> {
	const read = parseText(text);
	if ('problems' in read) return read;
	const nest = readNest(read.file);
	if ('problems' in nest) return nest;
	const problem = read.file as Readonly<Record<string, unknown>>;
	const answer = await nestTogether(ownProcess, workers, problem, patience);
	if (answer === null) throw new Error('none of the workers came to an answer');
	const noted = read.twice.map(problemJson);
	return { answer: noted.length > 0 ? { ...answer, problems: noted } : answer };
}

/** An answer a line, written as soon as it is found; a line with problems is answered with them. */
async function everyLine(file: string | undefined, patience: EffortLimit): Promise<number> {
	if (file !== undefined) readText(file); // an unreadable file is refused before the first answer
	const input = file === undefined ? process.stdin : createReadStream(file);
	let code = 0;
	for await (const line of createInterface({ input, crlfDelay: Infinity })) {
		if (line.trim() === '') continue;
		const answer = solve(line, patience);
		if ('problems' in answer) code = 1;
		const shown =
			'problems' in answer ? { problems: answer.problems.map(problemJson) } : answer.answer;
		await write(JSON.stringify(shown) + '\n');
	}
	return code;
}

/** Waits while whoever reads the answers is slower than they come. */
function write(text: string): Promise<void> {
	return new Promise((resolve, reject) => {
		process.stdout.write(text, (error) => (error ? reject(error) : resolve()));
	});
}
