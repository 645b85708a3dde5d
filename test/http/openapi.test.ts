import { readFileSync } from 'node:fs';
import { Validator } from '@seriousme/openapi-schema-validator';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { component } from '../../src/http/documents/component.ts';
import { tidyDocument } from '../../src/http/documents/tidy-document.ts';
import { runningApp } from './running-app.ts';

interface Operation {
  operationId?: string;
  summary?: string;
  responses: Record<string, { description: string }>;
}

interface Document {
  openapi: string;
  paths: Record<string, Record<string, Operation>>;
  components: { schemas: Record<string, unknown> };
}

const committed = readFileSync(new URL('../../openapi/openapi.json', import.meta.url), 'utf8');

describe('the OpenAPI document', () => {
  const running = runningApp();
  const served = async (): Promise<Document> => (await running.request().get('/openapi.json').expect(200)).body;

  it('is OpenAPI 3.1', async () => {
    const document = await served();
    const validator = new Validator();
    const result = await validator.validate(document as never);
    expect(result.errors ?? []).toEqual([]);
    expect(result.valid).toBe(true);
    expect(validator.version).toBe('3.1');
  });

  it('is the one committed; if it is not, run "npm run openapi" and look at the difference', async () => {
    expect(await served()).toEqual(JSON.parse(committed));
  });

  it('names and describes every operation', async () => {
    const operations = Object.values((await served()).paths).flatMap((path) => Object.values(path));
    expect(operations.length).toBeGreaterThan(3);
    const ids = operations.map((operation) => operation.operationId);
    expect(ids).not.toContain(undefined);
    expect(new Set(ids).size).toBe(ids.length);
    for (const operation of operations) {
      expect(operation.summary, operation.operationId).toBeTruthy();
      for (const response of Object.values(operation.responses)) {
        expect(response.description, operation.operationId).not.toBe('Default Response');
      }
    }
  });

  it('holds no schema twice and none without use', async () => {
    const document = await served();
    const text = JSON.stringify(document);
    for (const name of Object.keys(document.components.schemas)) {
      expect(text, name).toContain(`"#/components/schemas/${name}"`);
    }
    expect(text).not.toContain('9007199254740991');
  });
});

describe('the tidy step', () => {
  it('keeps what paths reach and drops the ending Input where the plain name is free or the same', () => {
    const reference = (name: string) => ({ $ref: `#/components/schemas/${name}` });
    const tidy = tidyDocument({
      paths: { '/a': { body: reference('PlanInput'), answer: reference('Part') } },
      components: {
        schemas: {
          Plan: { unused: true },
          PlanInput: { part: reference('PartInput'), other: reference('OtherInput') },
          Part: { inner: reference('Inner') },
          PartInput: { inner: reference('InnerInput') },
          Inner: { type: 'number' },
          InnerInput: { type: 'number', maximum: Number.MAX_SAFE_INTEGER },
          Other: { a: 1 },
          OtherInput: { a: 2 },
          Lonely: {},
        },
      },
    });
    expect(tidy).toEqual({
      paths: { '/a': { body: reference('Plan'), answer: reference('Part') } },
      components: {
        schemas: {
          Inner: { type: 'number' },
          Other: { a: 2 },
          Part: { inner: reference('Inner') },
          Plan: { part: reference('Part'), other: reference('Other') },
        },
      },
    });
  });

  it('refuses two schemas of one name', () => {
    component('TestOnlySchema', z.string());
    expect(() => component('TestOnlySchema', z.number())).toThrow('two schemas are called TestOnlySchema');
  });
});
