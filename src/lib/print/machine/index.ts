export { machineFiles } from './machine-files';
export { zipped } from './zip';
