export { ASSETS, ASSETS_VERSION, type Asset, assetAddress, FORM_MODULES, IMPORT_MAP, policyHash } from './assets.ts';
export { type FirstPaint, firstPaint } from './first-paint.ts';
