/** What is still being told: a thing the service could not read without one more answer, and which answer that is. */
import { SECTION_SHAPE_FIELDS } from '../../words/index.mjs';
import { isBlank, textAt, valueAt } from './draft.mjs';

/** @typedef {{ whole: string, pointer: string, says: string }} Wanting */

/**
 * Things of a draft that are begun and not yet whole; each is left out of the answer, and the form says so.
 *
 * @param {unknown} draft
 * @returns {Wanting[]}
 */
export function stillTold(draft) {
  /** @type {Wanting[]} */
  const found = [];
  const given = (/** @type {string} */ at) => !isBlank(valueAt(draft, at));
  /** @param {string} whole @param {string} pointer @param {string} says */
  const wants = (whole, pointer, says) => {
    if (!found.some((each) => each.whole === whole)) found.push({ whole, pointer, says });
  };
  /** @param {string} whole @param {readonly (readonly [string, string])[]} needs */
  const needs = (whole, needs) => {
    if (!given(whole)) return;
    for (const [at, says] of needs) if (!given(whole + at)) wants(whole, whole + at, says);
  };
  /** @param {string} at @param {(row: string) => void} each */
  const rows = (at, each) => {
    const list = valueAt(draft, at);
    if (!Array.isArray(list)) return;
    list.forEach((row, index) => {
      if (!isBlank(row)) each(`${at}/${index}`);
    });
  };

  needs('/site/hill', [
    ['/shape', 'Choose its shape.'],
    ['/height', 'Give its height.'],
    ['/distance', 'Give how far the tower is from the crest.'],
    ['/side', 'Say on which side of the crest the tower is.'],
  ]);
  if (given('/site/hill') && !given('/site/hill/run') && !given('/site/hill/halfLength')) {
    wants(
      '/site/hill',
      '/site/hill/halfLength',
      'Give one: from the crest half-way down, or from the foot of the hill to its crest.',
    );
  }
  /** What a lattice or a pole still lacks. @param {string} at @returns {readonly [string, string] | undefined} */
  const shapeLacks = (at) => {
    const shape = textAt(draft, `${at}/shape`);
    if (shape !== 'lattice' && shape !== 'pole') return undefined;
    if (!given(`${at}/width`)) return ['/width', 'Give its width.'];
    if (shape === 'lattice' && !given(`${at}/faces`)) return ['/faces', 'Say how many faces it has.'];
    if (shape === 'lattice' && !given(`${at}/members`)) return ['/members', 'Say what its members are.'];
    return undefined;
  };
  const towerLacks = shapeLacks('/tower');
  if (towerLacks) {
    for (const field of SECTION_SHAPE_FIELDS)
      wants(`/tower/${field}`, `/tower${towerLacks[0]}`, field === 'shape' ? towerLacks[1] : '');
  }
  rows('/tower/sections', (row) => {
    if (!given(`${row}/length`)) wants('/tower/sections', `${row}/length`, 'Give its length.');
    const lacks = shapeLacks(row);
    if (lacks) wants('/tower/sections', row + lacks[0], lacks[1]);
  });
  needs('/site/ice', [
    ['/thickness', 'Give its thickness.'],
    ['/gust', 'Give the gust that goes with it.'],
  ]);
  needs('/mast', [
    ['/outside', 'Give its outside diameter.'],
    ['/length', 'Give its whole length.'],
  ]);
  needs('/tower/foundation', [['/kind', 'Choose the type of footing.']]);
  const kind = textAt(draft, '/tower/foundation/kind');
  if (kind === 'block') {
    needs('/tower/foundation', [
      ['/length', 'Give its length.'],
      ['/width', 'Give its width.'],
      ['/depth', 'Give its depth.'],
    ]);
  }
  if (kind === 'pier')
    needs('/tower/foundation', [
      ['/diameter', 'Give its diameter.'],
      ['/depth', 'Give its depth.'],
    ]);
  needs('/tower/hinge', [['/height', 'Give the height of the hinge.']]);
  needs('/tower/hinge/raisedBy', [
    ['/kind', 'Choose what raises it.'],
    ['/anchor/0', 'Give where it is anchored, beside the hinge.'],
    ['/anchor/1', 'Give where it is anchored, above the hinge.'],
    ['/attach', 'Give where it is attached to the tower.'],
  ]);
  needs('/tower/hinge/counterpoise', [
    ['/weight', 'Give its weight.'],
    ['/below', 'Give how far it is below the hinge.'],
  ]);
  needs('/site/climate', [['/basis', 'Say how they were measured.']]);
  if (given('/site/climate') && !given('/site/climate/returnPeriods') && !given('/site/climate/yearlyMax')) {
    wants('/site/climate', '/site/climate/basis', 'Give the lines of a chart, or the strongest wind of each year.');
  }
  rows('/tower/supportedAt', (row) =>
    needs(row, [
      ['/height', 'Give its height.'],
      ['/by', 'Say what it is: guys or a bracket.'],
    ]),
  );
  rows('/cables', (row) =>
    needs(row, [
      ['/count', 'Give how many.'],
      ['/diameter', 'Give the diameter of one.'],
    ]),
  );
  rows('/loads', (row) => {
    if (!given(`${row}/above`) && !given(`${row}/height`)) {
      wants(row, `${row}/above`, 'Give its height: above the tower’s top, or above the ground.');
    }
    if (found.some(({ whole }) => whole === row)) return;
    for (const [at, says] of shapeNeeds(textAt(draft, `${row}/shape`), (at) => given(row + at)))
      wants(row, row + at, says);
  });
  rows('/ratings', (row) => {
    const of = textAt(draft, `${row}/of`);
    const says = Object.entries(/** @type {object} */ (valueAt(draft, row))).some(
      ([key, value]) => !['of', 'kind'].includes(key) && !isBlank(value),
    );
    if (!says) return;
    if (of === '') wants(row, `${row}/of`, 'Choose what is rated.');
    else if (of === 'gear') {
      if (!given(`${row}/breakingStrength`) && !given(`${row}/workingLoad`))
        wants(row, `${row}/breakingStrength`, 'Give its breaking strength or working load.');
    } else {
      const stated = textAt(draft, `${row}/kind`) || 'area';
      const has =
        stated === 'wind'
          ? given(`${row}/wind/speed`)
          : given(`${row}/${stated}`) ||
            (stated === 'area' && given(`${row}/areasBySpeed`)) ||
            (stated === 'torque' && given(`${row}/brake`));
      if (!has) wants(row, stated === 'wind' ? `${row}/wind/speed` : `${row}/${stated}`, 'Give what it is rated for.');
    }
  });
  return found;
}

/** @param {string} shape @param {(at: string) => boolean} given @returns {[string, string][]} */
function shapeNeeds(shape, given) {
  /** @param {string} at @param {string} what @returns {[string, string][]} */
  const need = (at, what) => (given(at) ? [] : [[at, `Give its ${what}.`]]);
  switch (shape) {
    case '':
    case 'stated':
      if (given('/front') || given('/side'))
        return [...need('/front', 'area from the front'), ...need('/side', 'area from the side')];
      if (given('/force') || given('/wind'))
        return [...need('/force', 'force'), ...need('/wind', 'speed of that force')];
      return need('/area', 'area, or say what it is known by');
    case 'tube':
    case 'dish':
      return need('/diameter', 'diameter');
    case 'plate':
      return [...need('/wide', 'width'), ...need('/tall', 'height')];
    case 'wire':
      return [
        ...need('/diameter', 'diameter'),
        ...need('/to/distance', 'far end'),
        ...need('/to/height', 'far end’s height'),
        ...need('/to/heading', 'direction'),
      ];
    case 'tubes':
      return given('/tubes') ? [] : [['/shape', 'Add its rows of tubes.']];
    default:
      return need('/width', 'width');
  }
}
