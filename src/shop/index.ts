export { FolderRefused } from './shop-folder';
export { startShop, type StartedShop } from './start-shop';
