import { it } from 'vitest';
import { readFileSync, writeFileSync } from 'node:fs';
import { runningApp } from './running-app.ts';
const running = runningApp();
it('x', async () => {
  const body = JSON.parse(readFileSync('openapi/examples/requirements.tower-to-order.json', 'utf8'));
  for (const as of ['text', 'json', 'html', 'pdf']) {
    const r = await running.request().post(`/v1/requirements?as=${as}`).send(body).responseType('blob');
    console.log(as, r.status, r.body.length);
    writeFileSync(`/tmp/req.${as}`, r.body);
    if (as === 'text' || r.status !== 200) console.log(r.body.toString());
  }
});
