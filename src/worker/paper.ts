import { cuttingListCsv, orderCsv } from '../lib/print/csv-files';
import type { Fonts } from '../lib/print/faces';
import type { Page } from '../lib/print/drawing';
import { labelPages } from '../lib/print/label-pages';
import { printPack, templatePages } from '../lib/print/pack';
import { writePdf } from '../lib/print/pdf';
import { sheetDrawing } from '../lib/print/sheet-drawing';
import { drawingSvg } from '../lib/print/svg';
import type { Plan } from '../lib/plan';
import type { FaceUrls, Paper, PaperKind } from '../lib/ui/planner';

/** The papers of a plan as files. Rejects with a sentence when a face cannot be fetched. */
export async function paper(kind: PaperKind, plan: Plan, faces: FaceUrls): Promise<Paper[]> {
	switch (kind) {
		case 'print-pack':
			return [await pdf('print-pack.pdf', plan, printPack(plan), faces)];
		case 'labels':
			return [await pdf('labels.pdf', plan, labelPages(plan), faces)];
		case 'templates':
			return [await pdf('templates.pdf', plan, templatePages(plan), faces)];
		case 'layouts':
			return layouts(plan);
		case 'order':
			return [text('order.csv', 'text/csv', orderCsv(plan))];
		case 'cutting-list':
			return [text('cutting-list.csv', 'text/csv', cuttingListCsv(plan))];
	}
}

async function pdf(name: string, plan: Plan, pages: Page[], faces: FaceUrls): Promise<Paper> {
	const { job } = plan;
	const meta = { title: job.name, author: job.shop.name, date: job.date };
	return { name, type: 'application/pdf', bytes: writePdf(pages, await fonts(faces), meta) };
}

async function fonts(faces: FaceUrls): Promise<Fonts> {
	const [regular, semibold, fallback] = await Promise.all(
		[faces.regular, faces.semibold, faces.fallback].map(bytesOf),
	);
	return { regular: regular!, semibold: semibold!, fallback: fallback! };
}

async function bytesOf(url: string): Promise<Uint8Array> {
	const answer = await fetch(url);
	if (!answer.ok) throw new Error(`A typeface could not be fetched (${answer.status}).`);
	return new Uint8Array(await answer.arrayBuffer());
}

function layouts(plan: Plan): Paper[] {
	return plan.boards.flatMap((boards) =>
		boards.answer.layouts.map((_, i) =>
			text(
				`${boards.material}-${i + 1}.svg`,
				'image/svg+xml',
				drawingSvg(sheetDrawing(plan, boards, i), { colours: 'inline' }),
			),
		),
	);
}

function text(name: string, type: string, content: string): Paper {
	return { name, type, bytes: new TextEncoder().encode(content) };
}
