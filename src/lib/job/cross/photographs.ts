import type { Job } from '../job';
import { pictureFrom } from '../photographs';
import { doubt, type Fault, refusal, remark } from './fault';

/** Pictures that are not what their name says, photographs of things that are gone, or double. */
export function oddPhotographs(job: Job): Fault[] {
	return [...tornPictures(job), ...misplaced(job), ...twice(job)];
}

function tornPictures({ pictures = {} }: Job): Fault[] {
	return Object.entries(pictures).flatMap(([hash, text]) => {
		const read = pictureFrom(hash, text);
		if ('bytes' in read) return [];
		return [
			refusal(
				['pictures', hash],
				`This picture cannot be used: ${read.refused}.`,
				'Save the job as a file again where the photograph is seen; the rest stands without it.',
			),
		];
	});
}

function misplaced(job: Job): Fault[] {
	const marks = new Set([
		...job.boxes.map(({ id }) => id),
		...job.panels.flatMap(({ id, covers }) => [id, ...covers.map((c) => `${id}/${c.id}`)]),
	]);
	return job.photographs.flatMap(({ of }, i) =>
		of === '' || marks.has(of)
			? []
			: [
					doubt(
						['photographs', i, 'of'],
						`The photograph belongs to "${of}", and there is no such box, panel or cover.`,
						'Choose what it belongs to, or the whole job.',
					),
				],
	);
}

function twice({ photographs }: Job): Fault[] {
	const hashes = photographs.map(({ picture }) => picture);
	return photographs.flatMap(({ picture }, i) =>
		hashes.indexOf(picture) === i
			? []
			: [
					remark(
						['photographs', i, 'picture'],
						'The same photograph stands in the job twice.',
						'Take one of them out; on paper it stands once.',
					),
				],
	);
}
