import { describe, expect, it } from 'vitest';
import { firstPaint } from '../../src/page/index.ts';

const bare = { codes: [], methods: [], plans: [], worksheets: [], version: '1' };

describe('the first paint of the form', () => {
  it('says who runs the service, where that is told', () => {
    expect(firstPaint(bare)).not.toContain('Run by');
    expect(firstPaint({ ...bare, runBy: { words: 'Hill Club', href: 'mailto:club@hill.example' } })).toContain(
      'Run by <a href="mailto:club@hill.example">Hill Club</a>. ',
    );
  });

  it('lets no word of a plan become markup or end its data', () => {
    const hostile = '</script><img src=x onerror=alert(1)>"\'';
    const page = firstPaint({ ...bare, plan: { title: hostile, units: 'us', loads: [{ name: hostile }] } });
    expect(page).not.toContain('<img');
    expect(page.match(/<\/script>/g)).toHaveLength(2);
    const [, data = ''] = /id="start">(.*?)<\/script>/s.exec(page) ?? [];
    expect(JSON.parse(data).draft.title).toBe(hostile);
  });

  it('leaves nothing of one plan in the next paint', () => {
    firstPaint({ ...bare, plan: { title: 'Of somebody else', units: 'si' } });
    expect(firstPaint(bare)).not.toContain('Of somebody else');
  });
});
