import { after } from '../affine';
import { nothingRead, type DrawingFile, type Fineness } from '../drawing-file';
import { faultyPath } from './left-out';
import { runsOfPath } from './path';
import { propsOf } from './property';
import { transformOf } from './transform';
import { outerViewport } from './viewport';
import { OUTERMOST, SvgWalk } from './walk';
import { readXml, type XmlElement } from './xml';

/* Text is only ever looked at: nothing of it is put into a page, run or fetched. */

/** Longest SVG read: three megabytes. */
const LONGEST = 3_000_000;

/** A whole SVG, or path data alone. `fine`: how closely curves are followed, in its own unit. */
export function readSvg(text: string, fine: Fineness): DrawingFile {
	if (text.length > LONGEST)
		return nothingRead(
			'The SVG is larger than 3 MB: too much for the outline of a panel.',
			'Save the outline alone.',
		);
	if (!text.includes('<')) return pathAlone(text, fine(null));
	const root = readXml(text);
	if ('what' in root) return nothingRead(root.what, root.fix);
	if (root.name !== 'svg')
		return nothingRead(
			`This is no SVG that can be read: its first tag is <${root.name.slice(0, 20)}>, not <svg>.`,
			'Save the outline as a plain SVG, or paste its path data.',
		);
	return drawingIn(root, text, fine);
}

function drawingIn(root: XmlElement, text: string, fine: Fineness): DrawingFile {
	const props = propsOf(root);
	const view = outerViewport(props);
	if ('what' in view) return nothingRead(`In the first tag of the SVG ${view.what}.`, view.fix);
	const walk = new SvgWalk(text, fine(view.says));
	const moved = transformOf(props);
	walk.noteSigns(root, props);
	if ('seen' in moved)
		walk.fault(root, `the transform "${moved.seen.slice(0, 60)}" cannot be read`, moved.fix);
	else if (props.of('display') === 'none') walk.hidden++;
	else
		walk.through(root, {
			...OUTERMOST,
			to: after(view.to, moved),
			inside: view.inside,
			visible: !['hidden', 'collapse'].includes(props.of('visibility') ?? ''),
		});
	return {
		runs: walk.runs,
		says: view.says,
		yDown: true,
		hidden: walk.hidden,
		complaints: walk.leftOut.told(),
	};
}

function pathAlone(text: string, fine: number): DrawingFile {
	const { runs, fault, whole } = runsOfPath(text, fine);
	if (!whole)
		return nothingRead(
			'The path data is far too long for the outline of a panel.',
			'Give the outline alone.',
		);
	return { runs, says: null, yDown: true, hidden: 0, complaints: fault ? [faultyPath] : [] };
}
