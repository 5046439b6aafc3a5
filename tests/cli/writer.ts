import { writeFiles } from '../../src/cli/write-files';

/*
 * Started by a test, to be killed: leaves one plan after the other, some minutes of them at most.
 * Every second one has another sheet.
 */

const [folder = ''] = process.argv.slice(2);
for (let n = 0; n < 3000; n++) {
	const sheets = [1, 2 + (n % 2)].map((sheet) => `layouts/sheet-ply-${sheet}.svg`);
	writeFiles(
		folder,
		['a.pdf', 'b.csv', 'c.json', ...sheets].map((name) => ({ name, data: `${n} `.repeat(2000) })),
	);
	if (n === 0) process.stdout.write('begun');
}
