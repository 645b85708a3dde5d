import { describe, expect, it } from 'vitest';
import { draftOf } from '../../src/page/form/draft.mjs';
import { putInto } from '../../src/page/form/stock.mjs';

const changed = (draft: unknown, fragment: Record<string, unknown>) => Object.fromEntries(putInto(draft, fragment));

describe('stock put into a plan', () => {
  const fragment = {
    tower: { top: 40, source: 'tape' },
    mast: { outside: 2 },
    ratings: [{ of: 'tower', area: 10 }],
  };

  it('takes the place of tower and mast with their ratings, and leaves those of other parts', () => {
    const draft = {
      tower: { top: '60', width: '18' },
      mast: { outside: '3', wall: '0.2' },
      ratings: [{ area: '9' }, { of: 'rotator', torque: '50' }, { of: 'mast', moment: '7' }, { of: 'foundation' }],
    };
    expect(changed(draft, fragment)).toEqual({
      '/tower': { top: '40', source: 'tape' },
      '/mast': { outside: '2' },
      '/ratings': [
        { of: 'rotator', torque: '50' },
        { of: 'tower', area: '10' },
      ],
    });
  });

  it('leaves a mast alone that the stock does not bring, and its ratings', () => {
    const draft = { mast: { outside: '3' }, ratings: [{ of: 'mast', moment: '7' }] };
    const changes = changed(draft, { tower: { top: 40 } });
    expect(changes).toEqual({ '/tower': { top: '40' }, '/ratings': [{ of: 'mast', moment: '7' }] });
  });

  it('adds loads and lines behind those that are there, in the place of blank rows, each by a name of its own', () => {
    const brought = { loads: [{ name: 'beam', area: '5.5 ft²' }], cables: [{ name: 'feed', diameter: 0.4 }] };
    expect(changed(draftOf({}), brought)).toEqual({
      '/loads': [{ name: 'beam', area: '5.5 ft²' }],
      '/cables': [{ name: 'feed', diameter: '0.4' }],
    });
    const draft = { loads: [{ name: 'beam', area: '3' }, {}, { name: 'beam 2' }], cables: [{}] };
    expect(changed(draft, brought)['/loads']).toEqual([
      { name: 'beam', area: '3' },
      { name: 'beam 2' },
      { name: 'beam 3', area: '5.5 ft²' },
    ]);
  });
});
