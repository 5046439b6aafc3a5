export { saveOpenJob } from './save-open-job';
export { saveWithPictures } from './with-pictures';
