import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { STATIONS, type StationRow } from '../../deploy/spreadsheets/club-stations.ts';
import { clubWorkbook, stationCells, tableCells } from '../../deploy/spreadsheets/club-workbook.ts';
import { buildApp, readConfiguration } from '../../src/http/index.ts';
import { type RecalculatedSheets, recalculated } from './recalculated.ts';

type App = Awaited<ReturnType<typeof buildApp>>;

interface Service {
  readonly app: App;
  readonly origin: string;
}

async function startedService(asked: string[]): Promise<Service> {
  const app = await buildApp({ configuration: readConfiguration({ LOG_LEVEL: 'silent', RATE_LIMIT: '1' }) });
  app.server.on('request', ({ method, url }, response) => {
    response.on('finish', () => asked.push(`${method} ${url} ${response.statusCode}`));
  });
  return { app, origin: await app.listen({ host: '127.0.0.1', port: 0 }) };
}

/** The same station as a plan, written down apart from the service's own reading of addresses. */
function planOf(station: StationRow): Record<string, unknown> {
  const given = (fields: Record<string, string | number | undefined>) =>
    Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
  const of = (name: string) => station[name];
  return {
    units: 'us',
    method: of('method'),
    site: { wind: of('speed'), exposure: of('exposure') },
    tower: {
      shape: 'lattice',
      ...given({
        support: of('support'),
        top: of('top'),
        faces: of('faces'),
        width: of('width'),
        members: of('members'),
      }),
    },
    loads: [{ name: 'antenna', ...given({ above: of('above'), area: of('area'), areaKind: of('areaKind') }) }],
    ...(of('cables') === undefined ? {} : { cables: [{ count: of('cables'), diameter: of('cableDiameter') }] }),
    ratings:
      of('ratedArea') === undefined
        ? []
        : [
            {
              of: 'tower',
              area: of('ratedArea'),
              top: of('ratedTop'),
              wind: given({
                speed: of('ratedSpeed'),
                basis: of('ratedBasis'),
                method: of('ratedMethod'),
                exposure: of('ratedExposure'),
                riskCategory: of('ratedRiskCategory'),
              }),
            },
          ],
  };
}

let addresses = 0;

async function posted(app: App, url: string, payload: object) {
  // Inside the process and from another address each time: what is compared is not a matter of limits.
  addresses += 1;
  const remoteAddress = `10.0.${Math.floor(addresses / 256)}.${addresses % 256}`;
  const { statusCode, body } = await app.inject({ method: 'POST', url, payload, remoteAddress });
  return { statusCode, body: JSON.parse(body) };
}

const sixDigits = (value: number) => Number(value.toPrecision(6));

/** Worked out by hand in test/http/cells.test.ts. */
const BY_HAND: Readonly<Record<string, number>> = {
  'force 105': 133.825,
  'mast-moment 0.25': 1232.39,
  'bundle-width 5': 1.09403,
  'speed 85': 70.9524,
  'chance 90': 0.0251745,
  'lower-at 89': 71.6436,
};

// test/deploy holds that the committed workbook is what the script makes; here it only names another port.
describe.each(['en-US', 'de-DE'])('the sample workbook in a spreadsheet program, %s', (locale) => {
  const asked: string[] = [];
  let app: App;
  let sheets: RecalculatedSheets;

  beforeAll(async () => {
    const service = await startedService(asked);
    app = service.app;
    sheets = await recalculated(await clubWorkbook(service.origin), locale);
  }, 110_000);
  afterAll(async () => {
    await app?.close();
  });

  const shown = (sheet: string, address: string) => sheets[sheet]?.[address] ?? ['', null];

  it('finds the decimal sign of the program', () => {
    expect(shown('Service', 'B5')[0]).toBe(locale === 'de-DE' ? ',' : '.');
  });

  it.each(STATIONS.map((station, index) => [station.name, station, index] as const))(
    'computes of a station what the check of its plan answers: %s',
    async (_, station, index) => {
      const cells = stationCells(index);
      const { statusCode, body } = await posted(app, '/v1/checks', planOf(station));
      if (statusCode === 422) {
        expect(station['speed']).toBe(1050);
        for (const address of Object.values(cells)) {
          expect(shown('Stations', address)).toEqual(['? speed: 1050 mph given, 0 to 400 mph allowed.', null]);
        }
        return;
      }
      expect(statusCode).toBe(200);
      expect(shown('Stations', cells.says)[0]).toBe(body.says);
      const [tower] = body.checks;
      expect(shown('Stations', cells.verdict)[0]).toBe(
        tower.verdict === 'open' ? 'open' : `${tower.verdict.replace('-', ' ')} (tower only)`,
      );
      if (tower.ratio === undefined) {
        for (const give of ['ratio', 'holdsTo', 'roomLeft'] as const) {
          expect(shown('Stations', cells[give])).toEqual(['open', null]);
        }
        return;
      }
      expect(shown('Stations', cells.ratio)[1]).toBe(sixDigits(tower.ratio));
      expect(shown('Stations', cells.holdsTo)[1]).toBe(sixDigits(tower.holdsTo.gust.value));
      const room = body.roomLeft?.[0]?.area?.value;
      if (room === undefined) expect(shown('Stations', cells.roomLeft)).toEqual(['open', null]);
      else expect(shown('Stations', cells.roomLeft)[1]).toBe(sixDigits(room));
    },
  );

  it('has stations of every verdict, so that each is compared', () => {
    const verdicts = STATIONS.map((_, index) => shown('Stations', stationCells(index).verdict)[0].split(' (')[0]);
    for (const verdict of ['within', 'low margin', 'over', 'open']) expect(verdicts).toContain(verdict);
  });

  it('computes single numbers as the answers in JSON do, or as worked out by hand', async () => {
    let byHand = 0;
    for (const { address, table, values } of tableCells()) {
      const [words, number] = shown('Single numbers', address);
      const named = Object.fromEntries(table.fields.map(({ name }, index) => [name, values[index]]));
      if (table.cell === 'pressure') {
        const { method, exposure, speed, height } = named;
        const { statusCode, body } = await posted(app, '/v1/pressures', {
          units: 'us',
          method,
          site: { wind: speed, exposure },
          structure: 'lattice',
          heights: [height],
        });
        if (statusCode === 422)
          expect([words, number]).toEqual(['? speed: 1200 mph given, 0 to 400 mph allowed.', null]);
        else expect(number, `pressure at ${height}`).toBe(sixDigits(body.heights[0].pressure.value));
      } else if (table.cell === 'rating' || table.cell === 'allowed-area') {
        const { area, speed, method, exposure, riskCategory, height, toMethod, toSpeed, toExposure } = named;
        const { statusCode, body } = await posted(app, '/v1/ratings', {
          units: 'us',
          top: height,
          structure: 'lattice',
          ratings: [{ of: 'tower', area, height, wind: { speed, method, exposure, riskCategory } }],
          ...(table.cell === 'rating'
            ? {}
            : { to: { height, wind: { speed: toSpeed, method: toMethod, exposure: toExposure } } }),
        });
        expect(statusCode).toBe(200);
        const [first] = body.ratings;
        const answer = table.cell === 'rating' ? first.force : first.equal;
        expect(number, table.cell).toBe(sixDigits(answer[0].value));
      } else {
        const expected = Object.entries(BY_HAND).find(([key]) =>
          values.some((value) => key === `${table.cell} ${value}`),
        )?.[1];
        if (expected === undefined) expect(number, `${table.title}: ${words}`).not.toBeNull();
        else {
          byHand += 1;
          expect(number, table.title).toBe(expected);
        }
      }
    }
    expect(byHand).toBe(Object.keys(BY_HAND).length);
  });

  it('asks OPTIONS and HEAD before GET, all are answered, and none met a limit', () => {
    const of = (method: string) => asked.filter((line) => line.startsWith(`${method} /v1/cells/`));
    const wanted = new Set(of('GET').map((line) => line.replace(/^GET (\S+) .*$/, '$1')));
    expect(wanted.size).toBeGreaterThanOrEqual(STATIONS.length * 5 + tableCells().length - 1);
    expect(of('OPTIONS').length).toBeGreaterThanOrEqual(wanted.size);
    expect(of('HEAD').length).toBeGreaterThanOrEqual(wanted.size);
    expect(asked.filter((line) => !/^(OPTIONS \S+ 204|HEAD \S+ 200|GET \S+ 200)$/.test(line))).toEqual([]);
  });
});
