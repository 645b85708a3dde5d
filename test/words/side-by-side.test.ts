import { describe, expect, it } from 'vitest';
import { partsSideBySide } from '../../src/words/index.ts';

const part = (id: string) => ({ id, kind: id.replace(/:.*/, ''), title: id.replace(/.*:/, '') });
const plan = (...ids: readonly string[]) => ids.map(part);

describe('parts side by side', () => {
  const before = plan('load:beam', 'load:panel', 'mast', 'tower', 'footing');
  const swapped = plan('load:other', 'load:panel', 'mast', 'tower', 'footing');
  const without = plan('load:beam', 'load:panel', 'load:more', 'tower-top', 'tower', 'footing');
  const rows = partsSideBySide([before, swapped, without]);

  it('has every part of the structure once, each in its place', () => {
    expect(rows.map(({ title }) => title)).toEqual([
      'tower-top',
      'mast',
      'tower',
      'footing',
      'panel',
      'loads that differ',
    ]);
    expect(rows[1]?.of.map((parts) => parts.length)).toEqual([1, 1, 0]);
  });

  it('puts every load that only some have into one row', () => {
    expect(rows.at(-1)?.of.map((parts) => parts.map(({ title }) => title))).toEqual([
      ['beam'],
      ['other'],
      ['beam', 'more'],
    ]);
    expect(partsSideBySide([before, before]).map(({ title }) => title)).not.toContain('loads that differ');
  });

  it('drops no part and shows none twice', () => {
    [before, swapped, without].forEach((parts, index) => {
      expect(rows.flatMap(({ of }) => of[index]?.map(({ id }) => id) ?? []).toSorted()).toEqual(
        parts.map(({ id }) => id).toSorted(),
      );
    });
  });
});
