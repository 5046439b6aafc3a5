import type { Box } from '../../../job';
import { braceName, type Inside } from '../inside';
import { framedName, type Seated } from '../mounted';
import { ventName } from '../vent';
import type { ProblemLog } from '../../problem-log';
import type { VolumeLine } from '../box-plan';

/**
 * What would have taken its share of the volume but was refused, a line of 0 L for each: the net is
 * without it. In which chamber it would have stood is not always known, so each chamber has them.
 */
export function refusedLines(box: Box, inside: Inside, log: ProblemLog): VolumeLine[] {
	const names = [
		...missingFramed('drivers', box.drivers, inside.seated),
		...missingFramed('radiators', box.radiators, inside.radiators),
		...missingVents(box, inside),
	];
	for (const [of, i] of log.refused()) {
		const name = nameOf(box, of, typeof i === 'number' ? i : 0);
		if (name !== null) names.push(name);
	}
	return [...new Set(names)].map((name) => ({
		what: `Without ${name}: refused, so not counted`,
		litres: 0,
	}));
}

function missingFramed(
	list: Seated['list'],
	asked: readonly { readonly name?: string | undefined; readonly count: number }[],
	seated: readonly { readonly index: number }[],
): string[] {
	return asked.flatMap(({ name, count }, d) => {
		const lost = count - seated.filter((s) => s.index === d).length;
		if (lost === 0) return [];
		const own = framedName(list, name, d);
		return [lost === count ? own : `${lost} of ${count} of ${own}`];
	});
}

function missingVents(box: Box, inside: Inside): string[] {
	const built = new Set(inside.vents.map((v) => v.setup.index));
	return box.vents.flatMap((vent, v) => (built.has(v) ? [] : [ventName(vent, v)]));
}

/** The name of any other thing that takes volume; null for what takes none. */
function nameOf(box: Box, of: string | number | undefined, i: number): string | null {
	const brace = box.braces[i];
	if (of === 'braces' && brace) return braceName(brace, i);
	if (of === 'dividers') return `divider ${i + 1}`;
	if (of === 'doublers') return `doubler ${i + 1}`;
	if (of === 'cleats') return 'the cleats';
	const device = box.devices[i];
	if (of === 'devices' && device?.side === 'inside') return device.name;
	return of === 'terminal' ? 'the terminal' : null;
}
