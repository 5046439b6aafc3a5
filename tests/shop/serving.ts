import { startShop } from '../../src/shop/start-shop';
import { RACK } from './shop';

/* A shop's server as a process of its own, to be killed: says its port, and then a link. */
const [folder = '', port = '0'] = process.argv.slice(2);
const shop = await startShop({
	...{ folder, app: folder, port: Number(port), strict: true, network: false, rack: RACK },
	note: (line) => void process.stderr.write(`${line}\n`),
});
const secret = shop.isNew ? (await shop.makeLink('Desk')).replace(/^.*=/, '') : '';
process.stdout.write(`${JSON.stringify({ port: shop.port, secret })}\n`);
