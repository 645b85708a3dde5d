import createClient from 'openapi-fetch';
import type { components, paths } from './generated/contract.ts';

/**
 * What a program does that was written from the contract alone: check a plan, try another antenna, read one number,
 * and tell a fault from an answer. The types are those of the generator, so that a wrong name here does not compile.
 */
export async function mainJob(origin: string) {
  const client = createClient<paths>({ baseUrl: origin });
  const plan: components['schemas']['Plan'] = {
    units: 'us',
    method: 'asce7-16',
    site: { wind: 105, exposure: 'C' },
    tower: { support: 'free', top: 48, frequency: 2, shape: 'lattice', faces: 3, width: 18, members: 'round' },
    loads: [{ name: 'beam', on: 'tower', above: 2, area: 5.5 }],
    cables: [{ count: 3, diameter: 0.405 }],
    ratings: [{ of: 'tower', area: 18, wind: { speed: 100, method: 'tia222-g' }, top: 48 }],
  };

  const checked = await client.POST('/v1/checks', { body: plan });
  if (checked.error !== undefined) throw new Error(checked.error.detail);
  const answer = checked.data as components['schemas']['Answer'];

  const proposals = [{ name: 'smaller beam', swap: [{ load: 'beam', with: { area: 3 } }] }];
  const added = await client.POST('/v1/additions', { body: { plan, proposals } });
  if (added.error !== undefined) throw new Error(added.error.detail);

  const query = { method: 'asce7-16', exposure: 'C', speed: '105', height: '50' };
  const pressure = await client.GET('/v1/cells/pressure', { params: { query }, parseAs: 'text' });

  const { site: _, ...withoutSite } = plan;
  const faulty = await client.POST('/v1/checks', { body: withoutSite as typeof plan });
  const stock = await client.GET('/v1/stock', {});

  return {
    verdict: answer.verdict,
    checks: answer.checks.map(({ id, verdict, ratio }) => ({ id, verdict, ratio })),
    proposals: added.data === undefined ? 0 : 1,
    pressure: pressure.data,
    fault: faulty.error?.faults?.map(({ pointer }) => pointer),
    stock: stock.data?.entries.length,
  };
}

const [origin] = process.argv.slice(2);
if (origin !== undefined) process.stdout.write(JSON.stringify(await mainJob(origin)));

declare const process: { readonly argv: readonly string[]; readonly stdout: { write(text: string): void } };
