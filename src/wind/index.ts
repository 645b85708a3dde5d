export * from './exposure-coefficient.ts';
export * from './ground-elevation.ts';
export * from './gust-effect.ts';
export * from './importance.ts';
export * from './site.ts';
export * from './speed-basis.ts';
export * from './topography.ts';
export * from './velocity-pressure.ts';
