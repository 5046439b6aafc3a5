import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { chart } from './chart';
import { classTables, growthTable, sizesTable, type Note } from './families';
import { outlineTable, outlineText } from './outlines';
import { paceTable, paceText } from './panel';
import { growthText, sheetsText, sizesText } from './report';
import { runStrip, stripText } from './strip';
import { ROOT } from '../tool.js';

const USAGE = `npm run bench -- [options]

Our saw nest beside the free rectangle packer and the bounds. A table goes to standard output and, with a chart, to out/bench/.

  --family made|class|sizes|growth|strip|outlines|panel|all
                                         made: instances by the published class definitions (with growth, the default);
                                         class: the published instances; sizes: several sizes of sheet (both need the
                                         folder of shared benchmarks beside the checkout); growth: 10 to 2,000 pieces;
                                         strip: rolls, made without waste and published; outlines: published outlines
                                         on a roll; panel: time a panel and its cloth take
  --only NAME    of strips and outlines, those of one family: irregular-esicup, strip-zdf ...
  --each N       instances made per class and size (1)
  --seconds N    longest processor time for one instance (1.5)
  --effort N     work for one instance instead; the same on every machine
  --seed N       seed of the search and of the instances made (1)
`;

// measured on two busy cores; the search divides its budget into shares, so it has to know roughly
// how much it has
const EFFORT_PER_SECOND = 50_000;

const { values } = parseArgs({
	options: {
		family: { type: 'string' },
		only: { type: 'string' },
		each: { type: 'string', default: '1' },
		seconds: { type: 'string' },
		effort: { type: 'string' },
		seed: { type: 'string', default: '1' },
		help: { type: 'boolean', default: false },
	},
});

function allowance(): { seconds: number; effort: number; seed: number } {
	const seed = Number(values.seed);
	if (values.effort !== undefined)
		return { seconds: Infinity, effort: Number(values.effort), seed };
	const seconds = Number(values.seconds ?? '1.5');
	return { seconds, effort: Math.round(seconds * EFFORT_PER_SECOND), seed };
}

const note: Note = (line) => {
	if (process.stderr.isTTY) process.stderr.write(`\r\u001b[K${line}`);
};

function main(): number {
	const family = values.family ?? 'made';
	if (
		values.help ||
		!['made', 'class', 'sizes', 'growth', 'strip', 'outlines', 'panel', 'all'].includes(family)
	) {
		process.stderr.write(USAGE);
		return values.help ? 0 : 2;
	}
	const all = family === 'all';
	const time = allowance();
	// Before all else: the first call is the one with nothing compiled yet.
	const pace = all || family === 'panel' ? paceTable(note) : null;
	const tables = [
		...(all || family === 'made' ? classTables(ROOT, Number(values.each), time, note) : []),
		...(all || family === 'class' ? classTables(ROOT, null, time, note) : []),
	];
	const sizes = all || family === 'sizes' ? sizesTable(ROOT, time, note) : null;
	const growth = all || family === 'made' || family === 'growth' ? growthTable(time, note) : null;
	const strips = all || family === 'strip' ? runStrip(ROOT, time, note, values.only) : null;
	const outlines =
		all || family === 'outlines' ? outlineTable(ROOT, time, note, values.only) : null;
	const text = [
		...tables.map(sheetsText),
		...(sizes ? [sizesText(sizes)] : []),
		...(growth ? [growthText(growth)] : []),
		...(strips ? [stripText(strips)] : []),
		...(outlines ? [outlineText(outlines)] : []),
		...(pace ? [paceText(pace)] : []),
	].join('\n');
	const out = join(ROOT, 'out', 'bench');
	mkdirSync(out, { recursive: true });
	writeFileSync(join(out, `${family}.md`), text);
	const charted = tables.length > 0 || growth !== null;
	if (charted) writeFileSync(join(out, `${family}.svg`), chart(tables, growth));
	note('');
	const written = charted ? `${family}.md and ${family}.svg` : `${family}.md`;
	process.stdout.write(`${text}\nWritten to out/bench/${written}\n`);
	return 0;
}

process.exitCode = main();
