export { ASSETS, ASSETS_VERSION, type Asset, assetAddress, FORM_MODULES, IMPORT_MAP, policyHash } from './assets.ts';
