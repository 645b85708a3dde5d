import { describe, expect, it } from 'vitest';
import { countAsked, pauseBefore } from '../../src/page/form/pace.mjs';

describe('the pace of the form', () => {
  it('is quick for a minute of ordinary typing, and never more than 300 requests a minute', () => {
    let now = 0;
    const times: number[] = [];
    // Who types without end: as soon as one request is allowed, the next key falls.
    while (now < 180_000) {
      now += pauseBefore(now);
      countAsked(now);
      times.push(now);
    }
    const perMinute = times.map((from) => times.filter((time) => time >= from && time < from + 60_000).length);
    expect(Math.max(...perMinute)).toBeLessThan(300);
    expect(Math.max(...perMinute)).toBeGreaterThan(150);

    // After a rest, a burst goes at once again.
    now += 60_000;
    for (let key = 0; key < 30; key += 1) {
      expect(pauseBefore(now)).toBeLessThanOrEqual(60);
      countAsked(now);
      now += 200;
    }
  });
});
