import { dependencies, LOOKED_AT, mayBeUsed } from './licences';

/*
 * Lists the licence of every package installed; ends with 1 when one is unknown or not permitted.
 */

const all = dependencies();
const width = Math.max(...all.map(({ licence }) => licence.length));
for (const { name, version, licence } of all)
	process.stdout.write(`${(licence || 'unknown').padEnd(width)}  ${name} ${version}\n`);
const wrong = all.filter((one) => !mayBeUsed(one));
for (const { name, licence } of wrong)
	process.stderr.write(`${name}: "${licence}" is not on the list of what may be used.\n`);
for (const [name, why] of LOOKED_AT) process.stdout.write(`looked at: ${name}: ${why}\n`);
process.stdout.write(`\n${all.length} packages, ${wrong.length} not permitted\n`);
process.exitCode = wrong.length === 0 && all.length > 0 ? 0 : 1;
