import { existsSync } from 'node:fs';
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import sample from '../../../shared/jobs/camper-bench.json';
import { PlaceRefused } from '../../shop/keeping';
import { type ShopPlace, startShop, type StartedShop } from '../../shop/start-shop';
import { parse, wholeNumber } from '../options';
import { Usage } from '../usage';

/** The app as it is built, seen from the package's command and from the sources. */
const APPS = ['../../build', '../../../build'];
const PORT = 4173;

/** Serves the app and one shop's documents until it is ended. */
export async function shopCommand(args: readonly string[]): Promise<number> {
	const { values, file } = parse(args, {
		folder: { type: 'string' },
		store: { type: 'string' },
		name: { type: 'string' },
		address: { type: 'string' },
		network: { type: 'boolean', default: false },
		port: { type: 'string' },
		link: { type: 'boolean', default: false },
	});
	if (file !== undefined) throw new Usage('A shop takes no file; its folder is given by --folder.');
	const shop = await started(values);
	process.stdout.write(greeting(shop, values['network'] === true));
	if (shop.isNew || values['link'] === true)
		process.stdout.write(
			`\nOpen this on your first device; whoever has it may do all:\n  ${await shop.makeLink('First device')}\n`,
		);
	else process.stdout.write('\nA new link by which all may be done: start it with --link.\n');
	await ended();
	await shop.close();
	return 0;
}

async function started(values: Values): Promise<StartedShop> {
	const { stock, shop } = sample;
	const asked = wholeNumber(values, 'port', 65_000) ?? Number(process.env['PORT'] ?? PORT);
	try {
		return await startShop({
			place: placeOf(values),
			app: appFolder(),
			port: asked,
			strict: values['port'] !== undefined || process.env['PORT_STRICT'] === '1',
			network: values['network'] === true,
			...addressOf(values['address']),
			rack: { stock, shop },
			note: (line) => void process.stderr.write(`${line}\n`),
		});
	} catch (fault) {
		if (fault instanceof PlaceRefused) throw new Usage(fault.message);
		if (fault instanceof Error && fault.message.startsWith('No free port'))
			throw new Usage(`${fault.message} Give another with --port.`);
		throw fault;
	}
}

type Values = Readonly<Record<string, string | boolean | undefined>>;

/** A shared store when one is named, by an option or by the environment; else a folder. */
function placeOf(values: Values): ShopPlace {
	const { folder, store = process.env['SHOP_STORE'], name = process.env['SHOP_NAME'] } = values;
	if (typeof store !== 'string' || store === '') {
		if (values['name'] !== undefined)
			throw new Usage('--name says which shop of a shared store: give its address with --store.');
		if (typeof folder === 'string') return { folder: resolve(folder) };
		return { folder: join(homedir(), 'kerf-and-nap-shop') };
	}
	if (folder !== undefined)
		throw new Usage('A shop is kept in a folder or in a shared store: give --folder or --store.');
	if (!/^rediss?:\/\/./.test(store) || !URL.canParse(store))
		throw new Usage(
			'--store is the address of a Redis or Valkey: redis://host:6379, or rediss:// with TLS.',
		);
	if (name !== undefined && !/^[a-z0-9-]{1,60}$/.test(String(name)))
		throw new Usage(`--name is "${String(name)}": give 1 to 60 small letters, digits and hyphens.`);
	return { store, name: typeof name === 'string' ? name : 'shop' };
}

function addressOf(text: string | boolean | undefined): { readonly address?: URL } {
	if (text === undefined) return {};
	const address = typeof text === 'string' && URL.canParse(text) ? new URL(text) : null;
	if (!address || !/^https?:$/.test(address.protocol))
		throw new Usage(
			`--address is "${String(text)}": give the whole address, as https://shop.example/.`,
		);
	return { address };
}

function appFolder(): string {
	const found = APPS.map((place) => fileURLToPath(new URL(place, import.meta.url)));
	const app = found.find((folder) => existsSync(join(folder, 'index.html')));
	if (!app) throw new Usage('The app is not built: run "npm run build" first.');
	return app;
}

function greeting({ addresses, fingerprint }: StartedShop, network: boolean): string {
	const [here, ...others] = addresses;
	const lines = [`Kerf & Nap is at ${here} (end it with Ctrl+C)`];
	if (!network) lines.push('On this machine only; for the others on your network add --network.');
	else if (others.length === 0) lines.push('This machine is on no network yet.');
	else {
		lines.push(`On your network, for whoever has a link: ${others.join(' ')}`);
		const plain = others.map((address) => address.replace('https:', 'http:')).join(' ');
		lines.push(
			`Each other device is told once at ${plain} how to trust this shop's certificate;`,
			`its fingerprint (SHA-256): ${fingerprint}`,
		);
	}
	return `${lines.join('\n')}\n`;
}

function ended(): Promise<void> {
	return new Promise((resolve) => {
		process.once('SIGINT', () => resolve());
		process.once('SIGTERM', () => resolve());
	});
}
