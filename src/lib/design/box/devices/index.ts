export { checkMounted } from './check-devices';
export { type Mounted, placeDevices } from './place-devices';
