import type { Job, Photograph } from '../../job';
import type { Plan } from '../../plan';
import { type Mark, placed, rect, wrapped } from '../drawing';
import { type Block, paragraph, space, subheading } from '../page';

/** Photographs on one card: four rows of three on a page of their own. */
export const MOST_ON_CARD = 12;
/** Paper between two beside each other, mm. */
const GAP = 5;
const CAPTION = 2.9;
/** So many stand two beside each other, others three. */
const IN_PAIRS = [2, 4];

/** Photographs under a heading, with what they show; nothing where there are none. */
export function photographBlocks(
	{ job }: Plan,
	title: string,
	all: readonly Photograph[],
	width: number,
): Block[] {
	const once = all.filter(({ picture }, i) => all.findIndex((p) => p.picture === picture) === i);
	const shown = once.slice(0, MOST_ON_CARD);
	if (shown.length === 0) return [];
	const across = IN_PAIRS.includes(shown.length) ? 2 : Math.min(3, shown.length);
	const wide = across === 1 ? width * 0.66 : (width - GAP * (across - 1)) / across;
	const rows: Block[] = [];
	for (let i = 0; i < shown.length; i += across)
		rows.push(
			rowOf(
				shown.slice(i, i + across).map((photograph) => cellOf(job, photograph, wide)),
				wide,
			),
		);
	const more = once.length - shown.length;
	return [
		space(3),
		subheading(title, width),
		...rows,
		...(more > 0
			? [
					paragraph(
						`${MOST_ON_CARD} of ${once.length} photographs, the first ones: a card holds no more. The others are kept with the job.`,
						width,
						{ size: 3.2 },
					),
				]
			: []),
	];
}

function rowOf(cells: readonly Block[], wide: number): Block {
	return {
		height: Math.max(...cells.map(({ height }) => height)) + 3,
		marks: cells.flatMap(({ marks }, i) => placed(marks, { x: i * (wide + GAP), y: 0 })),
	};
}

/** A picture, no taller than three quarters of its width, with its words under it. */
function cellOf(job: Job, photograph: Photograph, wide: number): Block {
	const { picture: hash, width, height } = photograph;
	const scale = Math.min(wide / width, (wide * 0.75) / height);
	const jpeg = job.pictures?.[hash];
	const least = jpeg === undefined ? wide / 2 : 0; // its words need room
	const size = { width: width * scale, height: Math.max(least, height * scale) };
	const words = captionOf(job, photograph);
	const picture: readonly Mark[] =
		jpeg === undefined
			? missing(wide, size.height)
			: [{ kind: 'photo', x: 0, y: 0, ...size, jpeg, hash, shows: words || 'Photograph' }];
	const caption = paragraph(words, wide, { size: CAPTION });
	return {
		height: size.height + 1 + caption.height,
		marks: [...picture, ...placed(caption.marks, { x: 0, y: size.height + 1 })],
	};
}

/** 'Behind the trim, left; 2026-11-20; Rear box'. */
function captionOf(job: Job, { shows, date, of }: Photograph): string {
	const said = [shows.trim(), date.trim(), thingNamed(job, of)];
	return said.filter((t) => t !== '').join('; ');
}

/** The box, panel or cover a photograph belongs to; empty for the whole job. */
function thingNamed({ boxes, panels }: Job, of: string): string {
	const [mark, inner] = of.split('/');
	const panel = panels.find(({ id }) => id === mark);
	const cover = panel?.covers.find(({ id }) => id === inner);
	const thing = inner === undefined ? (boxes.find(({ id }) => id === mark) ?? panel) : cover;
	return thing?.name ?? '';
}

const MISSING =
	'This photograph is not with the job here. Open the job on the device it was added on, or save the job as a file there.';

/** A box in its place that says so. */
function missing(width: number, height: number): Mark[] {
	const [edge, size, line] = [2, 2.9, 3.9];
	const lines = wrapped(MISSING, width - 2 * edge, size);
	return [
		{ kind: 'path', steps: rect(0.25, 0.25, width - 0.5, height - 0.5), line: 'narrow' },
		...lines.map((text, i): Mark => ({
			...{ kind: 'text', text, x: edge, y: edge + (i + 0.75) * line, size },
		})),
	];
}
