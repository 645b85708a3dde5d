import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { STOCK_KINDS, withUnits } from '../../plan/index.ts';
import { component } from '../documents/component.ts';
import { problemResponses } from '../problems/problem-schema.ts';
import { jsonResponse } from '../schemas/json-response.ts';
import { writable } from '../schemas/writable.ts';
import type { StockFolder } from '../stock/stock-folder.ts';

const UNITS = z.enum(['us', 'si']);

const stockSchema = component(
  'Stock',
  z
    .object({
      entries: z.array(
        z.object({
          id: z.string().meta({ description: 'Stays the same while file and title do.' }),
          kind: z.enum(STOCK_KINDS).meta({ description: 'What it is first of all.' }),
          title: z.string(),
          units: UNITS.meta({ description: 'Units of the plain numbers in the fragment.' }),
          source: z.string().meta({ description: 'Where its figures are from.' }),
          fragment: z.looseObject({}).meta({
            description:
              'Members of a plan that belong together: tower, mast, rotator, loads, cables, ratings. A load without a height is given one in the plan.',
          }),
        }),
      ),
      faults: z
        .array(
          z.object({
            file: z.string().meta({ description: 'Which file; blank for the folder itself.' }),
            at: z.string().optional().meta({ description: 'Where in it: a JSON pointer, or a row and its column.' }),
            says: z.string().meta({ description: 'What is wrong and what to do.' }),
          }),
        )
        .meta({ description: 'What could not be read; the last good state of such a file is offered.' }),
    })
    .meta({ description: "The club's own towers and antennas." }),
);

interface Stocked {
  readonly stock: StockFolder;
}

/** What the club owns, to be put into plans. */
export const stockRoutes: FastifyPluginAsyncZod<Stocked> = async (app, { stock }) => {
  app.get(
    '/v1/stock',
    {
      schema: {
        operationId: 'stock',
        tags: ['stock'],
        summary: "The club's own towers and antennas, as parts of plans",
        querystring: z.strictObject({
          units: UNITS.optional().meta({
            description:
              'Units of the plan the parts are for: numbers in other units then have theirs written behind them.',
          }),
        }),
        response: { 200: jsonResponse('The stock', stockSchema), ...problemResponses('bad-query') },
      },
    },
    async (request, reply) => {
      const { units } = request.query;
      const { entries, faults } = stock.state;
      const offered = entries.map((entry) =>
        units === undefined || units === entry.units
          ? entry
          : { ...entry, units, fragment: withUnits(entry.fragment, entry.units) },
      );
      return reply.header('cache-control', 'no-cache').send(writable({ entries: offered, faults }));
    },
  );
};
