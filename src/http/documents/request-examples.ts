import { readdirSync, readFileSync } from 'node:fs';

const FOLDER = new URL('../../../openapi/examples/', import.meta.url);

export interface RequestExample {
  readonly operationId: string;
  readonly name: string;
  readonly body: unknown;
}

/** The example bodies kept in openapi/examples, each named <operation>.<name>.json. */
export function requestExamples(): RequestExample[] {
  return readdirSync(FOLDER)
    .filter((file) => file.endsWith('.json'))
    .sort()
    .map((file) => {
      const [operationId = '', name = ''] = file.split('.');
      return { operationId, name, body: JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')) as unknown };
    });
}
