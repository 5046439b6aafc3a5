export { bytesOfText, joinedBytes, textOfBytes } from './bytes';
export { pictureFrom, picturesNamed, takeOutPictures, withPictures } from './carried';
export { bareJpeg, LONGEST_SIDE, MOST_BYTES, readJpeg } from './jpeg';
export { carriedPictures, MOST_PHOTOGRAPHS, type Photograph, photograph } from './photograph';
export { sha256 } from './sha256';
