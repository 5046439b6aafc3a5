import { startShop } from '../../src/shop/start-shop';

/* A shop's server as a process of its own, to be killed: says its port, and then a link. */
const [folder = '', port = '0'] = process.argv.slice(2);
const shop = await startShop({
	...{ folder, app: folder, port: Number(port) || 47_000 + (process.pid % 9000) },
	...{ strict: port !== '0', network: false, rack: { stock: {}, shop: {} } },
	note: (line) => void process.stderr.write(`${line}\n`),
});
const secret = shop.isNew ? (await shop.makeLink('Desk')).replace(/^.*=/, '') : '';
process.stdout.write(`${JSON.stringify({ port: shop.port, secret })}\n`);
