import { createHash } from 'node:crypto';

/** Where the page lies, and the root certificate beside it. */
export const TRUST_PAGE = '/certificate';
export const ROOT_FILE = '/certificate/root.crt';

/** What the page tells of one kind of device. */
interface Way {
	readonly device: string;
	readonly steps: readonly string[];
}

/*
 * In general words: the names of menus change from device to device and from year to year, what has
 * to be found in them does not.
 */
const WAYS: readonly Way[] = [
	{
		device: 'Desktop or laptop',
		steps: [
			'Download the certificate with the button above.',
			'Open the settings of the browser, search them for “certificates”, and import the file among the authorities (also “root” or “trusted root”) as one that may vouch for websites.',
			'Where the browser has no such list, it uses that of the system: open the downloaded file, and put the certificate among the trusted roots of the system; some ask afterwards to set it to “always trust”.',
			'Close the browser whole, and open it again.',
		],
	},
	{
		device: 'Phone or tablet that keeps downloads as files',
		steps: [
			'Download the certificate.',
			'Open the settings of the device, search them for “certificate”, and choose to install one from a file: of the kind “CA” or “authority”, not of a person or of a wireless network.',
			'It asks for the lock of the screen, and warns that whoever made such a certificate could listen in. This one can only vouch for addresses of a local network.',
			'Choose the downloaded file.',
		],
	},
	{
		device: 'Phone or tablet that takes it as a profile',
		steps: [
			'Download the certificate with the browser that came with the device; it says that a profile was downloaded.',
			'Open the settings: the downloaded profile stands at the top, or under the profiles in the general part. Install it.',
			'Then, in the general part under the information on the device, among the settings of trust for certificates, switch on full trust for it. Without this second step nothing changes.',
		],
	},
];

const STYLE = `
body { margin: 0 auto; max-width: 46rem; padding: 1rem; background: #fbf8f1; color: #1b1e21;
	font: 1.0625rem/1.5 system-ui, sans-serif; overflow-wrap: anywhere; }
h1 { font-size: 1.625rem; line-height: 1.2; } h2 { font-size: 1.1875rem; margin-top: 2rem; }
code { font-size: 1rem; } a { color: #1d5c97; } li { margin: 0.375rem 0; }
.go { display: inline-block; min-height: 44px; box-sizing: border-box; padding: 0.625rem 1.125rem;
	background: #1b1e21; color: #fbf8f1; text-decoration: none; }
`;
const STYLE_HASH = createHash('sha256').update(STYLE).digest('base64');

/** What the page may do: nothing but look as it does. */
export const TRUST_POLICY = `default-src 'none'; style-src 'sha256-${STYLE_HASH}'; frame-ancestors 'none'; base-uri 'none'`;

/**
 * How a device comes to trust this shop, for each kind of device.
 *
 * @param secure the shop's address once it is trusted
 * @param fingerprint of the root certificate
 */
export function trustPage(secure: string, fingerprint: string): string {
	return `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Trusting this shop - Kerf &amp; Nap</title>
<style>${STYLE}</style>
<h1>Trust this shop, once on each device</h1>
<p>The planner works from <a href="${escaped(secure)}">${escaped(secure)}</a>. A browser goes there
without a warning, keeps the planner for hours without the network, keeps the screen awake at the
bench and lets a page use the camera only once the device trusts the certificate that this shop has
made for itself.</p>
<p><a class="go" href="${ROOT_FILE}" download>Download the certificate</a></p>
<p>Compare before you install it: its SHA-256 fingerprint is</p>
<p><code>${escaped(fingerprint)}</code></p>
<p>and must be the same as the one that the machine of the shop shows where it was started, or
another device of the shop under <b>Devices</b>. This page may have come without protection: where the two
differ, somebody is between you and the shop. Install nothing then.</p>
${WAYS.map(wayOf).join('\n')}
<h2>Then</h2>
<p><a class="go" href="${escaped(secure)}">Go to the planner</a></p>
<p>It can be taken back at any time: delete the certificate in the place where it was installed. One
that may vouch only for this machine and for addresses of local networks does no harm elsewhere.</p>
</html>
`;
}

const wayOf = ({ device, steps }: Way): string =>
	`<h2>${device}</h2>\n<ol>\n${steps.map((step) => `<li>${step}</li>`).join('\n')}\n</ol>`;

const escaped = (text: string): string =>
	text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
