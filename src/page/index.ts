export { ASSETS, ASSETS_VERSION, type Asset, assetAddress, policyHash } from './assets.ts';
export { type FirstPaint, firstPaint } from './first-paint.ts';
