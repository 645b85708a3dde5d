import type { Answer } from '../answer/index.ts';

/** A table with its heads, units in them. */
export interface WindLoadTable {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly (string | number | undefined)[])[];
}

/** The wind loads of an answer as a table: a row for each thing the wind touches, the totals last. */
export function windLoadTable({ windLoads }: Pick<Answer, 'windLoads'>): WindLoadTable {
  const { units, rows, total } = windLoads;
  const heads = [
    'name',
    'kind',
    `low [${units.height}]`,
    `high [${units.height}]`,
    `front EPA [${units.area}]`,
    `side EPA [${units.area}]`,
    'coefficient',
    `facing EPA [${units.area}]`,
    `pressure [${units.pressure}]`,
    'gust effect',
    `force, allowable level [${units.force}]`,
    `moment at base, allowable level [${units.moment}]`,
    `moment at top, allowable level [${units.moment}]`,
    'at',
  ];
  const blank = Array.from({ length: 9 }, () => undefined);
  return {
    heads,
    rows: [
      ...rows.map((row) => [
        row.name,
        row.kind,
        row.low,
        row.high,
        row.front,
        row.side,
        row.coefficient,
        row.facing,
        row.pressure,
        row.gustEffect,
        row.force,
        row.momentAtBase,
        row.momentAtTop,
        row.at,
      ]),
      ['total', ...blank, total.force, total.momentAtBase, total.momentAtTop, undefined],
    ],
  };
}
