export { type AppOptions, buildApp } from './app.ts';
export { type Configuration, ConfigurationError, readConfiguration } from './configuration.ts';
