import { Ajv2020 } from 'ajv/dist/2020.js';

interface Response {
  readonly description: string;
  readonly content?: Readonly<Record<string, { readonly schema?: unknown }>>;
}

export interface Operation {
  readonly operationId: string;
  readonly method: string;
  /** As the contract writes it: /v1/demo-plans/{id}. */
  readonly path: string;
  readonly responses: Readonly<Record<string, Response>>;
  readonly hasBody: boolean;
  readonly examples: readonly unknown[];
}

interface Document {
  readonly paths: Readonly<
    Record<
      string,
      Readonly<
        Record<
          string,
          {
            operationId: string;
            responses: Record<string, Response>;
            requestBody?: { content?: Record<string, { examples?: Record<string, { value: unknown }> }> };
          }
        >
      >
    >
  >;
}

export interface Answer {
  readonly method: string;
  /** Path and query as sent. */
  readonly target: string;
  readonly status: number;
  readonly type: string;
  readonly body: string;
}

const inPointer = (key: string) => encodeURIComponent(key.replaceAll('~', '~0').replaceAll('/', '~1'));

/** The OpenAPI document as something that answers can be held against, read by a JSON Schema validator not our own. */
export class Contract {
  readonly operations: readonly Operation[];
  readonly #ajv = new Ajv2020({ strict: false, allErrors: true, validateFormats: false });

  constructor(document: unknown) {
    this.#ajv.addSchema({ $id: 'contract', ...(document as object) });
    this.operations = Object.entries((document as Document).paths).flatMap(([path, methods]) =>
      Object.entries(methods).map(([method, { operationId, responses, requestBody }]) => ({
        operationId,
        method: method.toUpperCase(),
        path,
        responses,
        hasBody: requestBody !== undefined,
        examples: Object.values(requestBody?.content?.['application/json']?.examples ?? {}).map(({ value }) => value),
      })),
    );
  }

  operationOf(method: string, target: string): Operation | undefined {
    const [path = ''] = target.split('?');
    return this.operations.find(
      (each) => each.method === method && new RegExp(`^${each.path.replaceAll(/\{\w+\}/g, '[^/]+')}$`).test(path),
    );
  }

  #against(pointer: string, value: unknown): string[] {
    const validate = this.#ajv.getSchema(`contract#${pointer}`);
    if (validate === undefined) return [`the contract has nothing at ${pointer}`];
    if (validate(value)) return [];
    return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath || 'the body'} ${message}`);
  }

  /** Where an answer is not what the contract says; an address outside it must answer by a problem all the same. */
  faultsOf({ method, target, status, type, body }: Answer): string[] {
    const [mediaType = ''] = type.split(';');
    const operation = this.operationOf(method, target);
    if (operation === undefined) {
      if (mediaType !== 'application/problem+json') return [`${mediaType} outside the contract`];
      return this.#against('/components/schemas/Problem', JSON.parse(body));
    }
    const response = operation.responses[status];
    if (response === undefined) return [`status ${status} is not in the contract`];
    if (response.content?.[mediaType] === undefined) return [`${mediaType} is not in the contract for ${status}`];
    if (!mediaType.endsWith('json')) return [];
    const at = ['paths', operation.path, method.toLowerCase(), 'responses', String(status), 'content', mediaType];
    return this.#against(`/${[...at, 'schema'].map(inPointer).join('/')}`, JSON.parse(body));
  }
}
