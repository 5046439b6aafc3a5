const ENTITIES: Readonly<Record<string, string>> = {
	'&': '&amp;',
	'<': '&lt;',
	'>': '&gt;',
	'"': '&quot;',
	"'": '&#39;',
};

/** A text as it stands in SVG, within a tag or between tags. */
export function escaped(text: string): string {
	return text.replace(/[&<>"']/g, (sign) => ENTITIES[sign] ?? sign);
}
