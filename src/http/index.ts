export { type AppOptions, buildApp } from './app.ts';
export {
  type Configuration,
  ConfigurationError,
  misspeltSettings,
  readConfiguration,
  settingsHelp,
} from './configuration.ts';
export { stockFaults } from './stock/stock-folder.ts';
