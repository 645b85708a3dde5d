import { describe, expect, it } from 'vitest';
import { csv, guarded, sheetNumber } from '../../src/http/cells/csv.ts';
import { VERSION } from '../../src/http/version.ts';
import { CELL_IDS, CELLS } from '../../src/plan/index.ts';
import fc from '../fast-check.ts';
import { demoPlan } from '../margins/demo-plan.ts';
import { runningApp } from './running-app.ts';

const running = runningApp();
const get = (address: string) => running.request().get(`/v1/cells/${address}`);
const textOf = async (address: string): Promise<string> => {
  const { text } = await get(address)
    .expect(200)
    .expect('content-type', /^text\/plain; charset=utf-8$/);
  return text;
};

const WIND = 'method=asce7-16&exposure=C&speed=105';
const RATED = 'area=18&speed=100&method=tia222-g&exposure=B&height=48';
const TEN =
  `${WIND}&support=free&top=48&faces=3&width=18&members=round&frequency=2&area=5.5&above=2&cables=3&cableDiameter=0.405` +
  '&ratedArea=18&ratedSpeed=100&ratedMethod=tia222-g&ratedTop=48';

/*
 * Worked out by hand arithmetic, apart from the program; a = 0.00256·0.85·105² = 23.99040:
 *   pressure     a·2.01·(50/900)^(2/9.5) = 26.2401 psf; below 15 ft a·2.01·(15/900)^(2/9.5) = 20.3651;
 *                in si 0.613·0.85·1.093775·46.9392² = 1255.68 Pa; a round pole has Kd = 1: 26.2401/0.85 = 30.8707
 *   force        0.6·0.85·26.2401·10 = 133.82 lbf; of an area of unsaid kind 1.8 times that
 *   area         1.2·2/12·20 = 4 ft²
 *   speed        (85 − 10.5)/1.05 = 70.9524 mph
 *   rating       q(48, B) = 0.00256·2.01·(48/1200)^(2/7)·0.85·100² = 17.43586 psf, 0.96·q·0.85·18 = 256.098 lbf for
 *                class II; a class not named reads as I, which credits least: 0.87 of it, 222.805 lbf
 *   allowed-area q(48, C) = 26.01555 psf, 256.098/(0.6·0.85·26.01555) = 19.302 ft²; from class I 16.793 ft²
 *   mast-moment  46 ksi·π·(2⁴ − 1.5⁴)/(32·2)/1.67 = 14.78868 kip·in = 1232.39 lbf·ft
 *   bundle-width 2.7013·0.405 = 1.09403 in
 *   chance       through 50 and 100 years, the most of the three lines: β = 6/(4.600149 − 3.901939) = 8.593403,
 *                μ = 92 − 3.901939·β = 58.46906, 1 − exp(−exp(−(90 − μ)/β)) = 0.0251745;
 *                through 10 and 50 years: β = 9.68774, μ = 54.1990, p = 0.024529, in 50 years 1 − (1 − p)^50 = 0.71112
 *   lower-at     89·√(1 − 0.1)·(1 − 0.1) = 75.9895 mph; with a margin of 0.2, 71.6436
 *   station      598.581 lbf as for the plan of ten numbers, and a mast of 2 in from 44 to 50 ft, as none is given:
 *                0.6·0.85·0.85·1.2·(2/12)·∫q dz = 15.8493 lbf; 614.4303/597.845 = 1.027742 in shear at the foot; rated for
 *                exposure C 0.755529·614.4303/598.581 = 0.775534; room there with a margin of 0.2
 *                (0.8·614.4303/0.775534 − 614.4303)/13.26793 = 1.46094 ft², a difference, so to five figures; holds to an actual gust of
 *                105·√(0.6·0.85/1.027742) = 73.966 mph
 */
const BY_HAND: readonly (readonly [address: string, value: number, within?: number])[] = [
  [`pressure?${WIND}&height=50`, 26.2401],
  [`pressure?${WIND}&height=10`, 20.3651],
  [`pressure?${WIND}&height=50&kd=0.85`, 26.2401],
  [`pressure?${WIND}&height=50&kd=1`, 30.8707],
  [`pressure?${WIND}&height=50&structure=pole`, 30.8707],
  ['pressure?method=asce7-16&exposure=C&speed=46.9392&height=15.24&units=si', 1255.68],
  ['pressure?method=asce7-16&exposure=C&speed=46.9392 m/s&height=15.24 m', 26.2401],
  [`force?${WIND}&height=50&area=10`, 133.825],
  [`force?${WIND}&height=50&area=10&areaKind=unknown`, 240.884],
  ['area?shape=tube&diameter=2&length=20', 4],
  [`area?shape=tube&diameter=2&length=20&${WIND}&height=50`, 4],
  ['area?shape=tube&diameter=2&length=20&count=2', 8],
  ['area?area=5.5', 9.9],
  ['area?area=5.5&areaKind=effective', 5.5],
  ['speed?speed=85&from=gust3-nominal&to=fastest-mile', 70.9524],
  [`rating?${RATED}`, 222.805],
  [`rating?${RATED}&riskCategory=II`, 256.098],
  [`allowed-area?${RATED}&riskCategory=II&toMethod=asce7-16&toSpeed=105&toExposure=C`, 19.302],
  [`allowed-area?${RATED}&toMethod=asce7-16&toSpeed=105&toExposure=C`, 16.7927],
  [`allowed-area?${RATED}&riskCategory=II&toSpeed=100`, 18],
  // The same standard and the same speed: the same area, what RS-222-C takes of an effective area being in both.
  ['allowed-area?area=30&speed=80&method=rs222-c&height=48&toSpeed=80', 30],
  ['allowed-area?area=30&speed=80&method=rs222-c&height=48&areaKind=effective&toSpeed=80', 30],
  ['allowed-area?area=30&speed=80&method=rs222-c&height=48&toSpeed=100', 19.2],
  ['allowed-area?area=30&speed=80&method=eia222-f&height=48&toSpeed=80', 30],
  ['mast-moment?outside=2&wall=0.25&yield=46', 1232.39],
  ['mast-moment?outside=50.8&wall=6.35&yield=317.159&units=si', 1670.9],
  ['bundle-width?count=5&diameter=0.405', 1.09403],
  ['chance?speed=90&returnPeriods=10:76;50:92;100:98', 0.0251745],
  ['chance?speed=90&returnPeriods=10:76;50:92&years=50', 0.71112],
  ['lower-at?holdsTo=89', 75.9895],
  ['lower-at?holdsTo=89&margin=0.2', 71.6436],
  ['lower-at?holdsTo=89&margin=0&forecastError=0', 89],
  [`station?${TEN}&give=ratio`, 1.027742],
  [`station?${TEN}&give=holdsTo`, 73.96604],
  [`station?${TEN}&ratedExposure=C&give=ratio`, 0.775534],
  [`station?${TEN}&ratedExposure=C&margin=0.2&give=roomLeft`, 1.46094, 4e-5],
];

describe('the head of a cell', () => {
  it('says which version answered', async () => {
    for (const as of ['text', 'csv']) {
      const { headers } = await get(`pressure?${WIND}&height=50&as=${as}`).expect(200);
      expect(headers['gustworthy-version']).toBe(VERSION);
    }
  });
});

describe('a cell', () => {
  it.each(BY_HAND.map(([address, value, within = 1.5e-5]) => [address, value, within] as const))(
    '%s gives %d',
    async (address, value, within) => {
      const text = await textOf(address);
      expect(text).toMatch(/^\d+(\.\d+)?$/);
      expect(Math.abs(Number(text) / value - 1)).toBeLessThan(within);
    },
  );

  it.each(CELL_IDS)('%s answers the example in the contract', async (id) => {
    expect(await textOf(`${id}?${CELLS[id].example}`)).toMatch(/^\d+(\.\d+)?$/);
  });

  it('gives the number of the sheet formula in full', async () => {
    expect(await textOf('pressure?method=asce7-16&exposure=C&speed=105&height=50')).toBe('26.2401');
  });

  it('gives the verdict of the tower alone, and never a pass where something is not shown', async () => {
    expect(await textOf(`station?${TEN}&ratedExposure=C&give=verdict`)).toBe('within (tower only)');
    expect(await textOf(`station?${TEN}&ratedRiskCategory=II&margin=0.3&give=verdict`)).toBe('low margin (tower only)');
    expect(await textOf(`station?${TEN}&give=verdict`)).toBe('open');
    expect(await textOf(`station?${TEN}&give=roomLeft`)).toBe('open');
    expect(await textOf(`station?${WIND}&support=free&top=48&give=ratio`)).toBe('open');
    // Where it is held is not known, and it is no cantilever from its foot: nothing is compared.
    const guyed = `method=asce7-16&exposure=C&speed=60&support=guyed&${TEN.slice(TEN.indexOf('top='))}`;
    expect(await textOf(`station?${guyed}&give=says`)).toMatch(/^Open: tower\. /);
    for (const give of ['ratio', 'verdict', 'holdsTo', 'roomLeft']) {
      expect(await textOf(`station?${guyed}&give=${give}`), give).toBe('open');
    }
    expect(await textOf('mast-moment?outside=20&wall=0.02&yield=100')).toMatch(/^not computed: /);
  });

  it('gives the sentence of the check of the same plan', async () => {
    // A cell does not say that the antenna sits on the tower itself.
    const ten = demoPlan('ten-numbers');
    const loads = (ten['loads'] as Record<string, unknown>[]).map(({ on: _, ...load }) => load);
    const { body } = await running
      .request()
      .post('/v1/checks')
      .send({ ...ten, loads })
      .expect(200);
    expect(body.checks[0].ratio.toPrecision(6)).toBe(await textOf(`station?${TEN}&give=ratio`));
    expect(await textOf(`station?${TEN}&give=says`)).toBe(body.says.replace('beam', 'antenna'));
  });
});

describe('a list', () => {
  it('gives a column under a head with its unit, with the mark of UTF-8', async () => {
    const { text } = await get(`pressure?${WIND}&height=10;20;30&as=csv`)
      .expect(200)
      .expect('content-type', /^text\/csv; charset=utf-8$/);
    expect(text).toBe('\uFEFFpressure [psf]\r\n20.3651\r\n21.6366\r\n23.5646\r\n');
  });

  it('goes by the accept header too', async () => {
    const { text } = await get(`pressure?${WIND}&height=10;20`).set('accept', 'text/csv').expect(200);
    expect(text).toBe('\uFEFFpressure [psf]\r\n20.3651\r\n21.6366\r\n');
    await get(`pressure?${WIND}&height=10`).set('accept', 'image/png').expect(406);
  });

  it('stands line by line as text', async () => {
    expect(await textOf(`pressure?${WIND}&height=10;20;30`)).toBe('20.3651\n21.6366\n23.5646');
  });

  it('may stand beside other lists of the same length, and beside none of another', async () => {
    expect(await textOf(`pressure?method=asce7-16&exposure=C&speed=105;210&height=10;10`)).toBe('20.3651\n81.4603');
    expect(await textOf(`pressure?method=asce7-16&exposure=C&speed=105;210&height=10;20;30`)).toBe(
      '? height is a list of 3, and speed one of 2: give lists of one length.',
    );
  });

  it('says a fault in its own row and leaves the others', async () => {
    expect((await textOf(`pressure?${WIND}&height=10;;3000;20`)).split('\n')).toEqual([
      '20.3651',
      '? height is missing: height above ground [us ft, si m].',
      '? height: 3000 ft given, 0 to 2000 ft allowed.',
      '21.6366',
    ]);
  });

  it('is not longer than 200, of stations 40', async () => {
    const values = (count: number) => Array.from({ length: count }, () => '10').join(';');
    expect((await textOf(`pressure?${WIND}&height=${values(200)}`)).split('\n')).toHaveLength(200);
    expect(await textOf(`pressure?${WIND}&height=${values(201)}`)).toBe(
      '? height: a list of 201 given, at most 200 allowed.',
    );
    expect(await textOf(`station?${TEN}&ratedYear=${values(41)}&give=ratio`)).toBe(
      '? ratedYear: a list of 41 given, at most 40 allowed.',
    );
  });
});

describe('a decimal comma', () => {
  it('is read and written when asked for', async () => {
    expect(await textOf(`pressure?${WIND},0&height=50,0&decimal=comma`)).toBe('26,2401');
    expect(await textOf('mast-moment?outside=2&wall=0,25&yield=46&decimal=comma')).toBe('1232,39');
    const { text } = await get(`pressure?${WIND}&height=10;20&decimal=comma&as=csv`).expect(200);
    expect(text).toBe('\uFEFFpressure [psf]\r\n20,3651\r\n21,6366\r\n');
  });

  it('is refused where it can mean two numbers', async () => {
    expect(await textOf(`pressure?method=asce7-16&exposure=C&speed=1,250&height=50`)).toMatch(
      /^\? speed: "1,250" can mean two numbers/,
    );
    expect(await textOf(`pressure?${WIND}&height=1.250&decimal=comma`)).toMatch(/^\? height: "1\.250" can mean two/);
  });
});

const FAULTS: readonly (readonly [address: string, words: string])[] = [
  [`pressure?method=asce7-16&exposure=C&speed=1200&height=50`, '? speed: 1200 mph given, 0 to 400 mph allowed'],
  [`pressure?${WIND}&height=50&heigth=50`, '? There is no parameter "heigth" here: did you mean height?'],
  [`pressure?${WIND}&height=50&zzz=1`, '? There is no parameter "zzz" here: give method, speed,'],
  [`pressure?${WIND}&height=50&constructor=1&hasOwnProperty=1`, '? There is no parameter "constructor" here: '],
  [`pressure?${WIND}&height=50&__proto__=1`, '? There is no parameter "__proto__" here: '],
  [`pressure?${WIND}&height=50&key=1`, '? There is no parameter "key" here: '],
  [`pressure?${WIND}&height=50&height=60`, '? height is given more than once: give it once, a list as 10;20;30'],
  [`pressure?${WIND}&height=50&units=metric`, '? units: "metric" given, us, si allowed'],
  [`pressure?${WIND}&height=50&as=json`, '? as: "json" given, text, csv allowed'],
  [`pressure?${WIND}&height=50&strict=yes`, '? strict: "yes" given, 0, 1 allowed'],
  [`pressure?${WIND}&height=50&kd=0.9`, '? kd: 0.9 given, 0.85 for a lattice, 1 for a pole allowed by this method'],
  [`pressure?${WIND}&height=50&kd=1&structure=lattice`, '? kd: 1 given, 0.85 for a lattice allowed by this method'],
  [`pressure?${WIND}&height=50&kd=x`, '? kd: "x" is not a share.'],
  [`pressure?${WIND}&height=50&structure=mast`, '? structure: "mast" given, lattice, pole allowed'],
  [`pressure?${WIND}&height=`, '? height is missing: '],
  ['pressure?method=asce7-16&exposure=E&speed=105&height=9', '? exposure: "E" given, B, C, D allowed'],
  ['pressure?method=asce7-61&exposure=C&speed=105&height=9', '? method: "asce7-61" given, asce7-10, '],
  ['pressure?method=en1991-1-4&exposure=C&speed=26&height=9', '? exposure C: EN 1991-1-4 uses terrain'],
  [`force?${WIND}&height=50&area=-1`, '? area: -1 ft² given, 0 to 2000 ft² allowed'],
  [`force?${WIND}&height=0&area=1`, '? height: 0 ft given, more than 0 ft allowed'],
  ['area?shape=wire&diameter=1', '? shape: "wire" given, stated, tube, plate, dish, lattice, pole allowed'],
  ['area?shape=tube&diameter=2', '? length is missing: '],
  ['area?shape=tube&diameter=2&length=20&speed=105', '? method is missing: '],
  ['area?shape=plate&wide=12', '? tall: shape "plate" needs "tall"'],
  ['area?', '? load has no area: give "area" from its sheet'],
  ['speed?speed=5&from=gust3-nominal&to=fastest-mile', '? A 3-second gust of 10.5 mph or less has no fastest mile'],
  ['speed?speed=85&from=gust3-nominal&to=fastest', '? to: "fastest" given, gust3-strength, '],
  [`allowed-area?${RATED}&toSpeed=105`, '? The other wind must leave nothing open: give toMethod, toSpeed, toExposure'],
  [`allowed-area?${RATED}&toSpeed=1105&toMethod=asce7-16`, '? toSpeed: 1105 mph given, 0 to 400 mph allowed'],
  ['mast-moment?outside=2&wall=1.5&yield=46', '? wall 1.5 in does not fit in a 2 in tube: give less than 1 in'],
  ['mast-moment?outside=2&wall=0.25', '? yield is missing: '],
  ['bundle-width?count=20&diameter=0.4', '? 20 lines in one bundle: 1 to 19 are covered'],
  ['bundle-width?count=5.5&diameter=0.4', '? count: 5.5 given, a whole number allowed'],
  ['chance?speed=90&returnPeriods=76', '? returnPeriods: "76" given, years and speed with a colon between'],
  ['chance?speed=90&returnPeriods=10:76;50:70', '? returnPeriods: 76 mph for 10 years, 70 mph for 50'],
  ['lower-at?holdsTo=89&forecastError=2', '? forecastError: 2 given, 0 to 0.95 allowed'],
  [`station?${TEN}&give=safe`, '? give: "safe" given, ratio, verdict, holdsTo, roomLeft, says allowed'],
  [`station?${TEN}&give=ratio&ratedYear=12`, '? ratedYear: 12 given, at least 1900 allowed'],
];

describe('a fault', () => {
  it.each(FAULTS)('%s is said in the cell: %s', async (address, words) => {
    const text = await textOf(address);
    expect(text.slice(0, words.length)).toBe(words);
  });

  it.each(FAULTS)('%s is a problem by strict=1', async (address, words) => {
    if (address.includes('strict=')) return;
    const { body, headers } = await get(`${address}&strict=1`).expect(400);
    expect(headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(body.type).toBe('/problems/bad-query');
    expect(`? ${body.faults[0].says}`.slice(0, words.length)).toBe(words);
  });

  it('comes with all others, each by its parameter', async () => {
    const { body } = await get('pressure?method=asce7-16&exposure=E&speed=abc&strict=1').expect(400);
    expect(body.faults.map((fault: { parameter: string }) => fault.parameter).sort()).toEqual([
      'exposure',
      'height',
      'speed',
    ]);
    const { body: listed } = await get(`pressure?${WIND}&height=10;-20&strict=1`).expect(400);
    expect(listed.faults).toEqual([
      {
        parameter: 'height',
        code: 'out-of-bounds',
        given: '-20 ft',
        allowed: '0 to 2000 ft',
        says: 'Row 2: height: -20 ft given, 0 to 2000 ft allowed.',
      },
    ]);
  });

  it.each(['=HYPERLINK("http://x.example")', '+1+cmd', '@SUM(A1)', '\t=1', '-2+3', '"', '🗼', '%00', 'x'.repeat(5000)])(
    'never begins a formula, whatever is written: %s',
    async (hostile) => {
      const text = encodeURIComponent(hostile);
      for (const address of [
        `pressure?method=asce7-16&exposure=C&speed=${text}&height=50`,
        `pressure?${WIND}&height=50&${text}=1`,
        `station?${TEN}&give=${text}`,
        `chance?speed=90&returnPeriods=${text}`,
        `mast-moment?outside=2&wall=0.25&yield=${text}`,
      ]) {
        const plain = await textOf(address);
        expect(plain).toMatch(/^(\?|\d)/);
        expect(plain.length).toBeLessThan(2000);
        const { text: table } = await get(`${address}&as=csv`).expect(200);
        for (const row of table.slice(1).split('\r\n')) expect(row).not.toMatch(/^"?[=+\-@\t]/);
      }
    },
  );
});

describe('whatever is asked', () => {
  const written = fc.oneof(
    fc.constantFrom(
      '',
      '0',
      '-1',
      '1e308',
      '1e-308',
      '1/0',
      'NaN',
      '48 ft 6 in',
      '5;6',
      ';',
      ':',
      '10:76;50:92',
      'Infinity',
    ),
    fc.constantFrom(
      'B',
      'II',
      'tia222-g',
      'fastest-mile',
      'lattice',
      'pole',
      'tube',
      'free',
      'ratio',
      'effective',
      '1',
      '3',
      '50',
    ),
    fc.string({ maxLength: 30 }),
  );
  const names = [...new Set(CELL_IDS.flatMap((id) => Object.keys(CELLS[id].parameters)))];

  it('is answered, by a number or by words that are no formula', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...CELL_IDS),
        fc.dictionary(fc.constantFrom(...names, 'decimal', 'units', 'as'), written, { maxKeys: 3 }),
        async (id, changes) => {
          const query = new URLSearchParams(CELLS[id].example);
          for (const [name, text] of Object.entries(changes)) query.set(name, text);
          const { text } = await get(`${id}?${query}`).expect(200);
          const lines = text
            .replace(/^\uFEFF/, '')
            .trimEnd()
            .split(/\r?\n/);
          const rows = text.startsWith('\uFEFF') ? lines.slice(1) : lines;
          const listed = Object.values(changes).some((value) => value.includes(';'));
          if (!listed) expect(rows.length).toBe(1);
          for (const row of rows) {
            expect(row).toMatch(
              /^(-?\d+([.,]\d+)?|"?\? .*|open.*|not computed.*|"?(within|low margin|over|open)\b.*)$/i,
            );
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('what a sheet asks before and beside', () => {
  it.each(CELL_IDS)('%s answers HEAD and OPTIONS', async (id) => {
    const address = `/v1/cells/${id}?${CELLS[id].example}`;
    const head = await running.request().head(address).expect(200);
    expect(head.headers['content-type']).toBe('text/plain; charset=utf-8');
    expect(head.headers['cache-control']).toMatch(/max-age=\d+/);
    const options = await running.request().options(address).expect(204);
    expect(options.headers['allow']).toBe('GET, HEAD, OPTIONS');
    await running.request().post(address).expect(405);
  });

  it('gets a tag, and nothing again while that stands', async () => {
    const address = `pressure?${WIND}&height=50`;
    const { headers } = await get(address).expect(200);
    expect(headers['cache-control']).toBe('public, max-age=3600');
    expect(headers['vary']).toBe('accept');
    const again = await get(address).set('if-none-match', `"other", ${headers['etag']}`).expect(304);
    expect(again.text).toBe('');
    const { headers: other } = await get(`pressure?${WIND}&height=51`).set('if-none-match', headers['etag'] as string);
    expect(other['etag']).not.toBe(headers['etag']);
  });
});

describe('the limit of requests', () => {
  const limited = runningApp({ rateLimit: 1, cellRateLimit: 3 });

  it('counts cells of every kind together, beside other requests, and neither HEAD nor OPTIONS', async () => {
    const address = '/v1/cells/bundle-width?count=5&diameter=0.4';
    for (let count = 0; count < 5; count += 1) {
      await limited.request().head(address).expect(200);
      await limited.request().options(address).expect(204);
    }
    await limited.request().get('/problems').expect(200);
    await limited.request().get('/problems').expect(429);
    await limited.request().get(address).expect(200);
    await limited.request().get('/v1/cells/lower-at?holdsTo=89').expect(200);
    await limited.request().get('/v1/cells/lower-at?holdsTo=abc').expect(200);
    const { body, headers } = await limited.request().get(address).expect(429);
    expect(body.type).toBe('/problems/too-many-requests');
    expect(body.detail).toContain('More than 3 requests');
    expect(Number(headers['retry-after'])).toBeGreaterThan(0);
    await limited.request().get('/v1/cells/lower-at?holdsTo=89').expect(429);
    await limited.request().head(address).expect(200);
  });
});

describe('POST /v1/checks as CSV', () => {
  const plan = {
    ...demoPlan('ten-numbers'),
    loads: [{ name: '=HYPERLINK("x"); beam, "old"', above: 2, area: 5.5 }],
  };

  it('gives the ledger, its units in the heads and its totals last', async () => {
    const { body } = await running.request().post('/v1/checks').send(plan).expect(200);
    const { text } = await running
      .request()
      .post('/v1/checks?as=csv')
      .send(plan)
      .expect(200)
      .expect('content-type', /^text\/csv; charset=utf-8$/);
    expect(text.startsWith('\uFEFFname,kind,low [ft],high [ft],front EPA [ft²],')).toBe(true);
    const lines = text.trim().split('\r\n');
    expect(lines).toHaveLength(body.windLoads.rows.length + 2);
    // Beam and lines by hand as in the plan of ten numbers: 132.486 lbf and 67.214 lbf; a mast not given 15.849 lbf; all 614.430 lbf.
    expect(lines[1]).toMatch(/^"'=HYPERLINK\(""x""\); beam, ""old""",load,50,50,9\.9,9\.9,/);
    expect(lines[1]).toContain(',132.486,');
    expect(lines.at(-1)).toMatch(/^total,,,,,,,,,,614\.43,/);
  });

  it('has semicolons with a decimal comma, and goes by the accept header', async () => {
    const { text } = await running
      .request()
      .post('/v1/checks?decimal=comma')
      .set('accept', 'text/csv')
      .send(plan)
      .expect(200);
    expect(text.startsWith('\uFEFFname;kind;')).toBe(true);
    expect(text).toMatch(/\r\ntotal;;;;;;;;;;614,43;/);
  });

  it('says faults as a problem', async () => {
    await running
      .request()
      .post('/v1/checks?as=csv')
      .send({ ...plan, units: 'feet' })
      .expect(422)
      .expect('content-type', /^application\/problem\+json/);
  });
});

describe('POST /v1/areas with a table', () => {
  const post = (query: string, table: string) =>
    running.request().post(`/v1/areas${query}`).set('content-type', 'text/csv').send(table);
  const rows = [
    ['name', 'height', 'shape', 'diameter', 'area', 'areaKind', 'count'],
    ['tube', '0 to 20', 'tube', '2', '', '', ''],
    ['', '', '', '', '', '', ''],
    ['"beam, ""old"""', '30', '', '', '5.5', 'effective', '2'],
  ];

  it.each([
    ['commas', ',', '?method=asce7-16'],
    ['semicolons', ';', '?method=asce7-16&units=us'],
    ['tabs', '\t', '?method=asce7-16'],
  ])('reads %s', async (_, separator, query) => {
    const table = `\uFEFF${rows.map((row) => row.join(separator)).join('\r\n')}\r\n`;
    const { body } = await post(query, table).expect(200);
    // 1.2·2/12·20 = 4 ft²; 2·5.5 = 11 ft².
    expect(body.items.map((item: { name: string; worst: number }) => [item.name, item.worst])).toEqual([
      ['tube', expect.closeTo(4, 9)],
      ['beam, "old"', expect.closeTo(11, 9)],
    ]);
    expect(body.units.area).toBe('ft²');
  });

  it('reads a decimal comma', async () => {
    const { body } = await post(
      '?method=asce7-16&units=si&decimal=comma',
      'name;height;area;areaKind\nbeam;9;0,511;effective',
    ).expect(200);
    expect(body.worst).toEqual({ value: expect.closeTo(0.511, 9), unit: 'm²' });
  });

  it.each([
    ['a wrong head', '?method=asce7-16', 'name,hight,area\nbeam,30,5', 'did you mean "height"?'],
    ['a head of the prototype', '?method=asce7-16', 'name,__proto__\nbeam,30', 'is headed "__proto__"'],
    ['a field that is a list', '?method=asce7-16', 'name,tubes\nbeam,30', 'does not fit into one cell'],
    ['a head twice', '?method=asce7-16', 'name,area,area\nbeam,3,4', 'Two columns are headed "area": keep one.'],
    ['no head above a column', '?method=asce7-16', 'name,\nbeam,30', 'Column 2 has no name'],
    ['no rows', '?method=asce7-16', 'name,height,area\n,,\n', 'no row below its head'],
    ['an open quote', '?method=asce7-16', 'name,height\n"beam,30', 'a quote that is not closed'],
    ['a cell too many', '?method=asce7-16', 'name,area\nbeam,1,250.5', 'Row 1 has more cells than the head'],
    ['a value that does not fit', '?method=asce7-16', 'name,height,area\nbeam,30,x', 'beam area: "x" is not an area'],
    ['a height above no tower', '?method=asce7-16', 'name,above,area\nbeam,2,3', 'needs a tower'],
    ['no method', '', 'name,height,area\nbeam,30,5', 'Method is missing'],
    ['an unknown method', '?method=asce', 'name,height,area\nbeam,30,5', 'Method: "asce" given'],
  ])('refuses %s', async (_, query, table, says) => {
    const { body } = await post(query, table).expect(422);
    expect(body.faults.map((fault: { says: string }) => fault.says).join(' ')).toContain(says);
  });

  it('refuses more rows than a plan has loads, a table elsewhere, and words of a table beside JSON', async () => {
    const many = Array.from({ length: 301 }, (_, index) => `load ${index},30,1`).join('\n');
    const { body } = await post('?method=asce7-16', `name,height,area\n${many}`).expect(422);
    expect(body.faults[0].says).toContain('at most 300 allowed');
    await running.request().post('/v1/checks').set('content-type', 'text/csv').send('name\nbeam').expect(415);
    const { body: mixed } = await running
      .request()
      .post('/v1/areas?method=asce7-16')
      .send({ units: 'us', method: 'asce7-16', loads: [] })
      .expect(400);
    expect(mixed.faults[0].parameter).toBe('method');
    await post('?method=asce7-16', '').expect(422);
  });
});

describe('the writer of tables', () => {
  it.each([
    [0, '0'],
    [-0, '0'],
    [26.240093, '26.2401'],
    [1232.3899, '1232.39'],
    [1234567.8, '1234570'],
    [-0.5, '-0.5'],
    [100, '100'],
    [1.5e-9, '0.0000000015'],
    [999999.96, '1000000'],
  ])('writes %d in plain digits', (value, text) => {
    expect(sheetNumber(value, 'point')).toBe(text);
    expect(sheetNumber(value, 'comma')).toBe(text.replace('.', ','));
  });

  it.each(['=1', '+1', '-1', '@a', '\tx', '\rx'])('guards %j', (text) => {
    expect(guarded(text)).toBe(`'${text}`);
  });

  it('leaves numbers and harmless texts as they are', () => {
    expect(guarded('beam = 3')).toBe('beam = 3');
    expect(csv([[-1.5, '-1.5', 'a"b', 'x;y', undefined]], 'comma')).toBe('\uFEFF-1,5;\'-1.5;"a""b";"x;y";\r\n');
  });
});
