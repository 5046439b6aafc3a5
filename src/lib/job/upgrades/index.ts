export { upgrade, VERSION } from './upgrade';
