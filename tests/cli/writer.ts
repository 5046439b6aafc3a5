import { writeFiles } from '../../src/cli/write-files';

/*
 * Started by a test, to be killed: leaves one plan after the other, some minutes of them at most.
 */

const [folder = ''] = process.argv.slice(2);
for (let n = 0; n < 3000; n++) {
	const files = ['a.pdf', 'b.csv', 'c.json', 'layouts/sheet-ply-1.svg'];
	writeFiles(
		folder,
		files.map((name) => ({ name, data: `${n} `.repeat(2000) })),
		() => true,
	);
	if (n === 0) process.stdout.write('begun');
}
