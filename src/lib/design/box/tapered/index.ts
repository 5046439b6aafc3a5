export { fillTapered } from './fill';
export { taperedForm } from './form';
export { taperedShell, type TaperedShell } from './tapered';
