/** Hands the person a file to keep. */
export function download(name: string, type: string, content: BlobPart): void {
	const url = URL.createObjectURL(new Blob([content], { type }));
	const link = document.createElement('a');
	link.href = url;
	link.download = name;
	link.click();
	// The browser reads the file after this turn; taking the address away at once would leave it with nothing.
	setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** A name any disk takes: 'Camper van, rear bench' -> 'camper-van-rear-bench'. */
export function fileName(title: string, ending: string): string {
	const plain = title
		.normalize('NFKD')
		.toLowerCase()
		.replace(/[^\p{L}\p{N}]+/gu, '-')
		.replace(/^-|-$/g, '');
	return `${plain.slice(0, 60) || 'job'}.${ending}`;
}
