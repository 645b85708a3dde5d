import { readFileSync } from 'node:fs';
import { deflateRawSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { runningApp } from '../http/running-app.ts';
import { demoPlan, tenNumbersAsTyped } from '../margins/demo-plan.ts';
import { keptHere, keptPlan, openForm, saysNow, settled, typeTenNumbers, verdictSentence } from './form-page.ts';
import { OTHER_HOST, realBrowser } from './real-browser.ts';

describe('the form, in a browser', () => {
  const service = runningApp();
  const browser = realBrowser();

  it('leads a newcomer from an empty sheet to a verdict, asks nothing of an empty sheet, and reaches no other host', async () => {
    const { page, messages, requests } = await browser.open();
    await openForm(page, service.origin);
    expect(await verdictSentence(page)).toContain('Give ten numbers');
    expect(requests.filter((address) => address.includes('/v1/checks'))).toEqual([]);
    await typeTenNumbers(page);
    await settled(page);
    const plan = await keptPlan(page);
    expect(plan).toEqual(withWindObjects(tenNumbersAsTyped()));
    const { text } = await service.request().post('/v1/checks?as=text').send(plan);
    expect(await verdictSentence(page)).toBe(text.split('\n')[0]);
    expect(await page.locator('.drawn svg').count()).toBe(2);
    expect(await page.locator('.ask li').count()).toBeGreaterThan(3);
    // A plan that is still being told is looked at for what cannot be read, and is refused for what is missing.
    expect(messages.filter((message) => !message.includes('422'))).toEqual([]);
    expect([...new Set(requests.map((address) => new URL(address).host))]).toEqual([new URL(service.origin).host]);
  });

  it('answers every change, names the last, and takes it back', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    const before = await verdictSentence(page);
    expect(before).toContain('0.943');
    const speed = page.getByLabel('Wind speed you were given');
    for (const text of ['104', '103', '102', '101', '100']) {
      await speed.fill(text);
      await saysNow(page, `${text} mph`);
    }
    expect(await page.locator('.moved').textContent()).toMatch(/wind speed you were given, tower 0\.943 → 0\.8/);
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await expect.poll(() => verdictSentence(page)).toBe(before);
    expect(await speed.inputValue()).toBe('105');
    await page.getByRole('button', { name: 'Redo', exact: true }).click();
    expect(await speed.inputValue()).toBe('100');
  });

  it('says an error at its entry and at the head, keeps the last answer, and clears it when mended', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    const wall = page.locator('#part-mast').getByLabel('Wall', { exact: true });
    await wall.fill('1.5');
    const says = 'Mast wall 1.5 in does not fit in a 2 in tube: give less than 1 in.';
    await page.locator('.mend').getByText(says).waitFor();
    expect(await wall.getAttribute('aria-invalid')).toBe('true');
    const note = await wall.getAttribute('aria-describedby');
    expect(await page.locator(`#${note}`).textContent()).toContain(says);
    expect(await verdictSentence(page)).toContain('0.943');
    expect(await page.locator('.waiting').textContent()).toContain('belongs to an earlier plan');
    await page.getByLabel('Wind speed you were given').fill('1,250');
    await page.locator('.mend').getByText('"1,250" can mean two numbers').waitFor();
    await page.locator('.mend a').first().click();
    await expect.poll(() => page.evaluate("document.activeElement?.getAttribute('aria-invalid')")).toBe('true');
    await page.getByLabel('Wind speed you were given').fill('105');
    await wall.fill('0.25');
    await page.locator('.mend').waitFor({ state: 'detached' });
    expect(await wall.getAttribute('aria-invalid')).toBeNull();
  });

  it('reads every entry from the first one on, and counts none as given that cannot be read', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin);
    const speed = page.getByLabel('Wind speed you were given');
    await speed.fill('one hundred');
    await page.locator('.mend').getByText('"one hundred" is not a speed').waitFor();
    expect(await speed.getAttribute('aria-invalid')).toBe('true');
    expect(await page.locator('.ten').getAttribute('aria-label')).toBe('1 of 10 given');
    expect(await page.locator('.mend li').count()).toBe(1);
    await page.locator('#at-loads-0').getByLabel('Its area', { exact: true }).fill('abc');
    await page.locator('.mend').getByText('"abc" is not an area').waitFor();
    await speed.fill('100');
    await expect.poll(() => page.locator('.ten').getAttribute('aria-label')).toBe('2 of 10 given');
    await page.locator('#at-loads-0').getByLabel('Its area', { exact: true }).fill('5');
    await page.locator('.mend').waitFor({ state: 'detached' });
  });

  it('offers both readings of a comma at its entry, and takes the one that is pressed', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    const speed = page.getByLabel('Wind speed you were given');
    await speed.fill('1,05');
    const note = page.locator('#at-site-wind-speed-note');
    await note.getByText('"1,05" can mean two numbers').waitFor();
    expect(await note.getByRole('button').allTextContents()).toEqual(['1.05', '105']);
    await note.getByRole('button', { name: '105' }).click();
    expect(await speed.inputValue()).toBe('105');
    await page.locator('.mend').waitFor({ state: 'detached' });
    await expect.poll(() => page.evaluate('document.activeElement?.id')).toBe('at-site-wind-speed');
    // One that can only be the decimal sign is taken, and said so.
    await speed.fill('47,5 m/s');
    await note.getByText('taken as 47.5 m/s').waitFor();
  });

  it('marks the last answer as one to an earlier plan, offline and with an entry to correct, wide and on a phone', async () => {
    for (const width of [1280, 390]) {
      const { page, context } = await browser.open({ viewport: { width, height: 844 } });
      await openForm(page, service.origin, '/?plan=river-bluff');
      await settled(page);
      const [answer, strip] = [page.locator('.answer'), page.locator('.strip-verdict')];
      const [heading, speed] = [page.locator('#the-answer'), page.getByLabel('Wind speed you were given')];
      const ink = () => answer.locator('.says').evaluate((each) => getComputedStyle(each).color);
      const fresh = await ink();
      const marked = async (isMarked: boolean) => {
        await answer.and(page.locator(isMarked ? '[data-earlier]' : ':not([data-earlier])')).waitFor();
        expect((await heading.textContent()) === 'Answer to an earlier plan').toBe(isMarked);
        expect(((await strip.textContent()) ?? '').includes('Earlier plan:')).toBe(isMarked);
        const status = (await answer.getByRole('status').first().textContent()) ?? '';
        expect(status.includes('belongs to an earlier plan')).toBe(isMarked);
        expect((await ink()) === fresh).toBe(!isMarked);
      };
      await marked(false);
      await speed.fill('fast');
      await marked(true);
      await speed.fill('105');
      await marked(false);
      await context.setOffline(true);
      await speed.fill('90');
      await marked(true);
      expect(await answer.locator('.says').textContent()).toContain('105 mph');
      await context.setOffline(false);
      await saysNow(page, '90 mph');
      await marked(false);
      // A newer request under way.
      await context.route('**/v1/checks*', async (route) => {
        await new Promise((done) => setTimeout(done, 900));
        await route.continue();
      });
      await speed.fill('91');
      await marked(true);
      await saysNow(page, '91 mph');
      await marked(false);
    }
  });

  it('asks whether a hill stands alone only where the standard does', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    await page.getByText('More about the wind', { exact: true }).click();
    const alone = page.getByLabel('no other hill near');
    expect(await alone.count()).toBe(1);
    await page.getByLabel('Standard for towers').selectOption('asce7-22');
    await expect.poll(() => alone.count()).toBe(0);
  });

  it('leaves a load that is still being told out of the answer, and says so', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    await page.getByRole('button', { name: 'Add a load' }).click();
    const load = page.locator('#at-loads-3');
    await load.getByLabel('What you call it').fill('new dish');
    await load.getByText('Not counted yet.').first().waitFor();
    expect(await page.locator('.mend').count()).toBe(0);
    expect(await verdictSentence(page)).toContain('0.943');
    await load.getByLabel('Known by').selectOption('dish');
    await load.getByLabel('Diameter').fill('24');
    await load.getByLabel('or above the ground').fill('40');
    await expect.poll(() => page.locator('.answer .progress').textContent()).toContain('new dish');
    expect(await load.getByText('Not counted yet.').count()).toBe(0);
  });

  it('brings back what belonged to another shape, and sends only what belongs to this one', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?plan=ten-numbers');
    const load = page.locator('#at-loads-0');
    await load.getByRole('button', { name: /Change/ }).click();
    await load.getByLabel('Known by').selectOption('plate');
    await load.getByLabel('Width', { exact: true }).fill('12');
    await load.getByLabel('Height', { exact: true }).fill('24');
    await settled(page);
    expect(((await keptPlan(page))['loads'] as unknown[])[0]).toEqual({
      name: 'beam',
      on: 'tower',
      above: 2,
      shape: 'plate',
      wide: 12,
      tall: 24,
    });
    await load.getByLabel('Known by').selectOption('');
    expect(await load.getByLabel('Its area', { exact: true }).inputValue()).toBe('5.5');
  });

  it('asks for what a tower waits for where it is to be answered, and takes one press for its own height', async () => {
    const { page } = await browser.open();
    const plan = demoPlan('ten-numbers');
    const { top: _, ...rating } = (plan['ratings'] as Record<string, unknown>[])[0] ?? {};
    const panel = { name: 'panel', height: 30, area: 1, areaKind: 'effective' };
    const silent = { ...plan, cables: undefined, ratings: [rating], loads: [...(plan['loads'] as object[]), panel] };
    const packed = deflateRawSync(JSON.stringify(silent)).toString('base64url');
    await openForm(page, service.origin, `/#plan=${packed}`);
    await settled(page);
    const { body } = await service.request().post('/v1/checks').send(silent);
    expect(body.assumed.map(({ at }: { at: string }) => at).sort()).toEqual([
      '/cables',
      '/loads/1/offset',
      '/ratings/0/top',
      '/tower/sections',
    ]);
    await page.locator('#at-cables').getByText('Lines not given. Assumed:').waitFor();
    await page.getByRole('button', { name: 'The tower: Change' }).click();
    const top = page.locator('#at-ratings-0-top');
    expect(await top.isVisible()).toBe(true);
    await page.getByRole('button', { name: 'for this tower’s height' }).click();
    expect(await top.inputValue()).toBe('48');
    await page.getByRole('button', { name: 'panel: Change' }).click();
    await page.locator('#at-loads-1-offset').fill('1.5');
    // A load above the top is not asked how far off the axis it is.
    await page.getByRole('button', { name: 'beam: Change' }).click();
    expect(await page.locator('#at-loads-0-offset').count()).toBe(0);
    await page.getByLabel('No lines run up this tower').check();
    await settled(page);
    expect(await keptPlan(page)).toMatchObject({ cables: [], ratings: [{ top: 48 }] });
    await page.getByLabel('No lines run up this tower').uncheck();
    expect('cables' in (await keptPlan(page))).toBe(false);
  });

  it('says that no lines run up the tower, keeps that over a reload and in a link, and takes the rows back', async () => {
    const { page, context } = await browser.open();
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    await openForm(page, service.origin, '/?plan=ten-numbers');
    const none = page.getByLabel('No lines run up this tower');
    await none.check();
    expect(await page.locator('#at-cables-0').count()).toBe(0);
    expect((await keptPlan(page))['cables']).toEqual([]);
    await keptHere(page, '"cables":"no"');
    await page.getByRole('button', { name: 'Copy link' }).click();
    await page.getByText('Link copied').waitFor();
    const link = (await page.evaluate('navigator.clipboard.readText()')) as string;
    const other = await browser.open();
    await openForm(other.page, '', link);
    expect((await keptPlan(other.page))['cables']).toEqual([]);
    expect(await other.page.getByLabel('No lines run up this tower').isChecked()).toBe(true);
    await page.reload();
    await page.locator('html[data-ready]').waitFor();
    expect(await none.isChecked()).toBe(true);
    await page.getByRole('button', { name: 'Add a run of cables' }).click();
    expect(await none.isChecked()).toBe(false);
    await page.getByRole('button', { name: 'Leave out cable run 1' }).click();
    expect('cables' in (await keptPlan(page))).toBe(false);
    expect(await none.isChecked()).toBe(false);
  });

  it('takes loads pasted from a sheet, and says what it cannot read', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?plan=ten-numbers');
    await page.getByText('Paste rows from a sheet').click();
    const box = page.getByLabel(/One load a row/);
    await box.fill('name\tcolour\nwhip\tred');
    await page.getByRole('button', { name: 'Add these rows' }).click();
    await page.getByText('No question goes with the column colour').waitFor();
    await box.fill(
      'Antenna;Height above top (ft);Area;Type of area;turns\n"small, quad";4;3.5;effective area (drag included);yes\nwhip;6 ft 6 in;0.4;;no',
    );
    await page.getByRole('button', { name: 'Add these rows' }).click();
    expect((await keptPlan(page))['loads']).toEqual([
      { name: 'beam', on: 'tower', above: 2, area: 5.5 },
      { name: 'small, quad', above: 4, area: 3.5, areaKind: 'effective', turns: true },
      { name: 'whip', above: '6 ft 6 in', area: 0.4, turns: false },
    ]);
    await settled(page);
    expect(await page.locator('.mend').count()).toBe(0);
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    expect(((await keptPlan(page))['loads'] as unknown[]).length).toBe(1);
  });

  it('takes "I don’t know" for an answer and says which reading or gap follows', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    const steel = page.locator('#part-mast').getByLabel('I don’t know: Yield strength of its metal');
    await steel.check();
    const entry = page.locator('#at-mast-yield');
    expect(await entry.inputValue()).toBe('');
    expect(await entry.getAttribute('placeholder')).toBe('not known');
    await page.locator('#at-mast-yield-note').getByText('grade is assumed').waitFor();
    await steel.uncheck();
    expect(await entry.inputValue()).toBe('46');
    await page.getByRole('button', { name: 'The tower: Change' }).click();
    expect(await page.locator('#at-ratings-0-wind-exposure-note').textContent()).toContain('B assumed');
  });

  it('keeps the plan over a reload, and where the browser keeps nothing it says so', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin);
    await typeTenNumbers(page);
    await settled(page);
    const says = await verdictSentence(page);
    await keptHere(page, 'tia222-g');
    await page.reload();
    await page.locator('html[data-ready]').waitFor();
    await expect.poll(() => verdictSentence(page)).toBe(says);

    const without = await browser.open();
    await without.page.addInitScript(
      "Object.defineProperty(window, 'localStorage', { get() { throw new Error('off') } })",
    );
    await openForm(without.page, service.origin);
    await without.page.getByText('This browser keeps nothing').waitFor();
    expect(without.messages).toEqual([]);
  });

  it('opens what it saved, refuses what is no plan, and keeps and tells what it has no entry for', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin);
    const open = async (name: string, text: string) => {
      const [chooser] = await Promise.all([
        page.waitForEvent('filechooser'),
        page.getByRole('button', { name: 'Open', exact: true }).click(),
      ]);
      await chooser.setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
    };
    for (const id of ['river-bluff', 'guyed-lattice', 'house-bracket', 'light-mast', 'headland-ridge', 'ten-numbers']) {
      const plan = demoPlan(id);
      await open(`${id}.json`, JSON.stringify(plan));
      await page.getByText(`${id}.json opened`).waitFor();
      expect(await keptPlan(page), id).toEqual(withWindObjects(plan));
    }
    await open('holiday.json', '{"days": 3}');
    await page.getByText('holiday.json holds no plan').waitFor();
    await open('letter.txt', 'Dear sir');
    await page.getByText('letter.txt is not JSON').waitFor();
    const odd = { ...demoPlan('ten-numbers'), colour: 'red', mast: { outside: 2, length: [3, 4, 5] } };
    await open('odd.json', JSON.stringify(odd));
    await page.getByText('The form has no entry for 2 things').waitFor();
    const saved = await keptPlan(page);
    expect(saved['colour']).toBe('red');
    expect(saved['mast']).toEqual({ outside: 2, length: [3, 4, 5] });
    await page.locator('.mend').getByText('no field "colour"').waitFor();
  });

  it('carries the whole plan in a link, and refuses a damaged or hostile one in words', async () => {
    const { page, context } = await browser.open();
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    await openForm(page, service.origin, '/?plan=house-bracket');
    await page.getByRole('button', { name: 'Copy link' }).click();
    await page.getByText('Link copied').waitFor();
    const check = (await page.evaluate('navigator.clipboard.readText()')) as string;
    expect(check).toMatch(/\/#plan=[\w-]+$/);
    const other = await browser.open();
    await openForm(other.page, '', check);
    expect(await keptPlan(other.page)).toEqual(withWindObjects(demoPlan('house-bracket')));
    expect(other.requests.filter((address) => address.includes('plan=') || address.includes('%22'))).toEqual([]);

    for (const fragment of [
      '#plan=AAAA',
      '#plan=%3Cscript%3E',
      `#plan=${'A'.repeat(200_000)}`,
      '#plan=',
      bombFragment(),
    ]) {
      const hostile = await browser.open();
      await openForm(hostile.page, service.origin, `/${fragment}`);
      await hostile.page.getByText(/link (is damaged|holds more)/).waitFor();
      expect(await verdictSentence(hostile.page)).toContain('Give ten numbers');
      expect(hostile.messages).toEqual([]);
    }
  });

  it('does not lose the plan kept here when a link brings another', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin);
    await page.getByLabel('Name of the plan').fill('My own');
    await keptHere(page, 'My own');
    await page.goto('about:blank');
    const check = `/#plan=${deflateRawSync(JSON.stringify(demoPlan('ten-numbers'))).toString('base64url')}`;
    await openForm(page, service.origin, check);
    await expect.poll(() => page.getByLabel('Name of the plan').inputValue()).toBe('Ten numbers');
    expect(page.url()).toBe(`${service.origin}/`);
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    expect(await page.getByLabel('Name of the plan').inputValue()).toBe('My own');
    await page.getByRole('button', { name: 'Redo', exact: true }).click();
    await keptHere(page, 'Ten numbers');
    await page.reload();
    await page.locator('html[data-ready]').waitFor();
    await page.getByText('Start from an invented plan').click();
    await page.getByRole('button', { name: 'My own' }).click();
    expect(await page.getByLabel('Name of the plan').inputValue()).toBe('My own');
  });

  it('reads a plan of format 1 that this browser kept, and one in a link', async () => {
    const old = (name: string) => readFileSync(new URL(`../plan/format-1/${name}`, import.meta.url), 'utf8');
    const { page, messages } = await browser.open();
    await page.addInitScript(`localStorage.setItem('gustworthy-plan', ${JSON.stringify(old('draft.json'))})`);
    await openForm(page, service.origin);
    const kept = await keptPlan(page);
    expect(kept).toMatchObject({
      format: 2,
      tower: { base: 2, supportedAt: [{ height: 40 }] },
      wanted: { margin: 0.2 },
    });
    expect(kept).toMatchObject({ cables: [{ arrangement: 'flat' }], titleBlock: { applicant: 'Invented Applicant' } });
    await settled(page);
    expect(await verdictSentence(page)).not.toContain('Give ten numbers');

    const other = await browser.open();
    const { plan } = JSON.parse(old('plans/river-bluff.json'));
    const check = `/#plan=${deflateRawSync(JSON.stringify(plan)).toString('base64url')}`;
    await openForm(other.page, service.origin, check);
    const renewed = await keptPlan(other.page);
    expect(renewed['format']).toBe(2);
    const [then, now] = await Promise.all(
      [plan, renewed].map((each) => service.request().post('/v1/checks').send(each).expect(200)),
    );
    expect(now?.body.checks.length).toBeGreaterThan(3);
    expect(now?.body.checks).toEqual(then?.body.checks);
    expect([...messages, ...other.messages]).toEqual([]);
  });

  it('switches units there and back without losing a digit', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    const before = await keptPlan(page);
    const ratio = await page.locator('.strip-verdict b').textContent();
    await page.getByRole('radio', { name: 'metres, m/s' }).check();
    await settled(page);
    expect(await page.getByLabel('Wind speed you were given').inputValue()).toBe('46.9392');
    expect(await page.getByLabel('Top above ground').inputValue()).toBe('14.6304');
    expect(await page.locator('.answer .says').textContent()).toContain('46.9 m/s');
    // The constant of the pressure is printed differently in the two systems, 0.06 % apart.
    expect(Number(await page.locator('.strip-verdict b').textContent())).toBeCloseTo(Number(ratio), 2);
    await page.getByRole('radio', { name: 'feet, mph' }).check();
    expect(await keptPlan(page)).toEqual(before);
  });

  it('sets other antennas beside the plan, and takes one', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    await page.getByRole('button', { name: 'Try another antenna' }).click();
    await page.getByLabel('Its area', { exact: true }).last().fill('15.5');
    await page.locator('.proposal').getByLabel('Type of area').selectOption('effective');
    await page.getByRole('button', { name: 'Leave one out' }).click();
    await page.locator('.proposal').nth(1).getByLabel('Load').selectOption('link panel');
    const table = page.getByRole('region', { name: 'Candidates side by side', exact: true });
    await expect.poll(() => table.getByRole('columnheader').count()).toBe(4);
    const plan = demoPlan('river-bluff');
    const { body } = await service
      .request()
      .post('/v1/additions')
      .send({ plan, proposals: [{ name: 'p', remove: ['link panel'] }] });
    const tower = body.after[0].checks.find((check: { id: string }) => check.id === 'tower').after.ratio as number;
    const row = table.getByRole('row').filter({ has: page.getByRole('rowheader', { name: 'Tower', exact: true }) });
    expect(await row.getByRole('cell').nth(2).textContent()).toContain(tower.toPrecision(3));
    await table.getByRole('button', { name: 'Put B in the plan' }).click();
    await settled(page);
    const kept = (await keptPlan(page))['loads'] as { name: string }[];
    expect(kept.map(({ name }) => name)).toEqual(['four-element beam', 'vertical']);
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    expect(((await keptPlan(page))['loads'] as unknown[]).length).toBe(3);
  });

  it('answers a forecast on a card, and says what is wrong with one', async () => {
    const { page, context } = await browser.open();
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    const cardFor = async (speed: string) => {
      await page.getByLabel('A wind is forecast').fill(speed);
      await page.getByLabel('Type of the speed that is forecast').selectOption('mean-10min');
      const [card] = await Promise.all([
        context.waitForEvent('page'),
        page.getByRole('button', { name: 'What to do, on a card' }).click(),
      ]);
      await card.waitForLoadState();
      return card.locator('body').textContent();
    };
    // 55 mph in ten minutes: times 1.66 a gust of 91.3 mph, above any forecast that keeps the margin.
    expect(await cardFor('55')).toMatch(/Forecast 55 mph 10-minute mean: gusts of 91\.3 mph\. Lower it flat/);
    expect(await cardFor('0')).toContain('0 mph given, more than 0 mph allowed');
    expect(await cardFor('fast')).toContain('"fast" is not a speed');
  });

  it('asks once for a change, and nothing more while nobody types', async () => {
    const { page, requests } = await browser.open();
    await openForm(page, service.origin);
    await typeTenNumbers(page);
    await settled(page);
    await page.waitForTimeout(500);
    const asked = () => requests.filter((address) => address.includes('/v1/checks')).length;
    const before = asked();
    await page.getByLabel('Top above ground').fill('50');
    await page.waitForTimeout(2_000);
    expect(asked()).toBe(before + 1);
  });

  it('says when the service does not answer, keeps what is typed, and goes on when it does', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    await page.route('**/v1/checks*', (route) => route.abort());
    await page.getByLabel('Wind speed you were given').fill('101');
    await page.getByText('The service does not answer. What you type is kept').waitFor();
    expect(await verdictSentence(page)).toContain('105 mph');
    await page.unroute('**/v1/checks*');
    await saysNow(page, '101 mph');
    expect(await page.locator('.waiting').textContent()).toBe('');
  });

  it('says so when the service asks for a pause, and keeps what is typed', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    await page.route('**/v1/checks*', (route) =>
      route.fulfill({
        status: 429,
        headers: { 'retry-after': '1' },
        contentType: 'application/problem+json',
        body: JSON.stringify({ type: '/problems/too-many-requests', status: 429, title: 'Too many requests' }),
      }),
    );
    await page.getByLabel('Wind speed you were given').fill('102');
    await page.getByText('The service asks for a pause').waitFor();
    await page.unroute('**/v1/checks*');
    await saysNow(page, '102 mph');
  });

  it('works under another host name over plain http', async () => {
    const { page, messages, requests } = await browser.open();
    await openForm(page, `http://${OTHER_HOST}:${new URL(service.origin).port}`, '/?plan=ten-numbers');
    await page.getByLabel('Wind speed you were given').fill('90');
    await saysNow(page, '90 mph');
    expect(messages).toEqual([]);
    expect(requests.every((address) => new URL(address).hostname === OTHER_HOST)).toBe(true);
  });
});

/** A wind given as a bare speed is kept as what it stands for: an object with that speed. */
function withWindObjects(plan: unknown): unknown {
  const site = (plan as { site: { wind: unknown } }).site;
  return {
    ...(plan as object),
    site: { ...site, wind: typeof site.wind === 'object' ? site.wind : { speed: site.wind } },
  };
}

/** A few hundred bytes that would unpack to many megabytes. */
function bombFragment(): string {
  return `#plan=${deflateRawSync(Buffer.alloc(30_000_000, 32)).toString('base64url')}`;
}
