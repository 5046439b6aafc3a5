import type { Plan } from '../lib/plan';
import { type Fonts, isPdf, machineZip, pdfFiles, plainFiles, type OutputKind } from '../lib/print';
import type { FaceUrls, ReadyFile } from '../lib/ui/planning';

/** The output files of one kind. Rejects with a sentence when a face cannot be fetched. */
export async function outputFiles(
	kind: OutputKind,
	plan: Plan,
	faces: FaceUrls,
): Promise<ReadyFile[]> {
	const files = isPdf(kind) ? pdfFiles(kind, plan, await fonts(faces)) : withoutFaces(kind, plan);
	return files.map(({ name, type, data }) => ({
		name,
		type,
		bytes: typeof data === 'string' ? new TextEncoder().encode(data) : data,
	}));
}

/** A click saves one file for machines, not fifty. */
function withoutFaces(kind: Parameters<typeof plainFiles>[0], plan: Plan) {
	return kind === 'machine' ? machineZip(plan) : plainFiles(kind, plan);
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
