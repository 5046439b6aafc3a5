export { Proof } from './proof';
