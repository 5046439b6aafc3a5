import { LAYERS } from './layers';

/** What lies beside the files, in words: read before the first cut. */
export function readMe(jobName: string): string {
	const layers = Object.entries(LAYERS).map(([name, { says }]) => `  ${name.padEnd(12)} ${says}`);
	return [
		`Files for machines: ${jobName}`,
		'',
		'Each part and each blank of cloth is one DXF and one SVG of the same lines; so is each',
		'sheet that a router cuts, and each roll. part- is a part of board, blank- a blank of',
		'cloth, sheet- and roll- the whole as it is laid out.',
		'',
		'UNIT: millimetres, 1 : 1. Measure the bar under each drawing once it is read: 100 mm.',
		'SIZE: the lines are the true edges of the finished cut. No kerf, no bit and no knife is',
		'allowed for: set the tool outside or inside the line on the machine.',
		'FACES: a part is drawn as the face named in its text is looked at. Layers that end in',
		'_FAR are cut from the face behind, drawn as if one looked through: turn the part over',
		'left to right and mirror them.',
		'CLOTH is drawn as its BACK is seen, a mirror of what shows: lay it face down.',
		'BEVELS are not drawn; the line of a bevelled part is the blank that holds both faces.',
		'ARCS are arcs, circles are circles; knife grooves follow curves in short straight steps.',
		'',
		'Layers:',
		...layers,
		'',
		'Check sizes, tools, depths and hold-downs on the machine before cutting. Who runs a',
		'machine goes by its manual and the rules of the shop.',
		'',
	].join('\r\n');
}
