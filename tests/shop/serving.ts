import sample from '../../shared/jobs/camper-bench.json';
import { startShop } from '../../src/shop/start-shop';

/*
 * A shop's server as a process of its own, to be killed: says its port, and then a link. Kept in a
 * folder, or in the shared store of this address.
 */
const [place = '', port = '0', app = '', network] = process.argv.slice(2);
const { stock, shop: settings } = sample;
const shop = await startShop({
	place: place.includes('://') ? { store: place, name: 'ours' } : { folder: place },
	...{ app, port: Number(port) || 47_000 + (process.pid % 9000) },
	...{ strict: port !== '0', network: network === 'network', rack: { stock, shop: settings } },
	note: (line) => void process.stderr.write(`${line}\n`),
});
const secret = shop.isNew ? (await shop.makeLink('Desk')).replace(/^.*=/, '') : '';
process.stdout.write(`${JSON.stringify({ port: shop.port, secret })}\n`);
