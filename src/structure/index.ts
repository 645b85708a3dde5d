export * from './dead-load.ts';
export * from './exposed-tower.ts';
export * from './iced-items.ts';
export * from './level.ts';
export * from './profile.ts';
export * from './station.ts';
export * from './wind-item.ts';
export * from './windward.ts';
