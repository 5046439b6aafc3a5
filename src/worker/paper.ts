import type { Plan } from '../lib/plan';
import { type Fonts, isPdf, pdfFiles, plainFiles, type OutputKind } from '../lib/print';
import type { FaceUrls, ReadyFile } from '../lib/ui/planning';

/** The papers of a plan as files. Rejects with a sentence when a face cannot be fetched. */
export async function paper(kind: OutputKind, plan: Plan, faces: FaceUrls): Promise<ReadyFile[]> {
	const files = isPdf(kind) ? pdfFiles(kind, plan, await fonts(faces)) : plainFiles(kind, plan);
	return files.map(({ name, type, data }) => ({
		name,
		type,
		bytes: typeof data === 'string' ? new TextEncoder().encode(data) : data,
	}));
}

async function fonts(faces: FaceUrls): Promise<Fonts> {
	const [regular, semibold, fallback] = await Promise.all([
		bytesOf(faces.regular),
		bytesOf(faces.semibold),
		bytesOf(faces.fallback),
	]);
	return { regular, semibold, fallback };
}

async function bytesOf(url: string): Promise<Uint8Array> {
	const answer = await fetch(url);
	if (!answer.ok) throw new Error(`A typeface could not be fetched (${answer.status}).`);
	return new Uint8Array(await answer.arrayBuffer());
}
