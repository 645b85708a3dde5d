export { elevation } from './elevation.ts';
