export { type MachineFile, machineFiles } from './machine-files';
export { zipped } from './zip';
