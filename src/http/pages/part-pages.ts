import type { AreasAnswer, PressuresAnswer, Quantity, RatingsAnswer } from '../../answer/index.ts';
import { withArticle } from '../../foundation/index.ts';
import { METHOD_BY_ID } from '../../methods/index.ts';
import { figures, SPEED_WORDS } from '../../words/index.ts';
import { documentPage } from './document-page.ts';
import { type Markup, markup } from './markup.ts';

interface Said {
  readonly says: string;
}

/** These answers stand at /v1/…, one folder below the root. */
const TO_ROOT = '../';

const inWords = ({ value, unit }: Quantity) => `${figures(value)} ${unit}`.trim();

interface Column<Row> {
  readonly head: string;
  readonly wind?: boolean;
  readonly of: (row: Row) => string;
}

/** A table that folds into paragraphs on a phone; the first column names the row. */
function table<Row>(caption: string, [first, ...columns]: readonly Column<Row>[], rows: readonly Row[]): Markup {
  return markup`<table class="ledger fold"><caption class="unseen">${caption}</caption>
<thead><tr><th scope="col">${first?.head}</th>${columns.map(({ head }) => markup`<th scope="col">${head}</th>`)}</tr></thead>
<tbody>
${rows.map(
  (row) => markup`<tr><th scope="row">${first?.of(row)}</th>${columns.map(
    ({ head, wind, of }) => markup`<td data-h="${head}"${wind ? markup` class="wind"` : undefined}>${of(row)}</td>`,
  )}</tr>
`,
)}</tbody></table>`;
}

function partPage(title: string, lead: string, body: Markup, notes: readonly Said[]): string {
  const main = markup`<div class="title"><h1>${title}</h1><p class="lead">${lead}</p></div>
<section>${body}</section>
<section aria-labelledby="notes"><h2 class="head" id="notes">What was assumed</h2>
<ul>${notes.map(({ says }) => markup`<li>${says}</li>`)}</ul></section>`;
  return documentPage({ title, toRoot: TO_ROOT, main });
}

/** Areas as a page. */
export function areasPage(answer: AreasAnswer): string {
  const { height, area } = answer.units;
  const lead = `Total ${inWords(answer.worst)} effective at the worst heading.`;
  const body = table<AreasAnswer['items'][number]>(
    'Effective areas',
    [
      { head: 'name', of: ({ name }) => name },
      {
        head: `height, ${height}`,
        of: ({ low, high }) => (low === high ? figures(low) : `${figures(low)} to ${figures(high)}`),
      },
      { head: `front, ${area}`, of: ({ front }) => figures(front) },
      { head: `side, ${area}`, of: ({ side }) => figures(side) },
      { head: `worst, ${area}`, of: ({ worst }) => figures(worst) },
    ],
    answer.items,
  );
  return partPage('Effective areas', lead, body, [...answer.notes, ...answer.entryWarnings]);
}

/** The wind at heights as a page. */
export function pressuresPage(answer: PressuresAnswer): string {
  const { speed, factors } = answer;
  const method = METHOD_BY_ID[answer.method].title;
  const lead = `By ${method}, from ${withArticle(inWords(speed))} ${SPEED_WORDS[speed.basis]}. Direction factor ${figures(factors.directionFactor)}, gust effect ${figures(factors.gustEffect)}; forces times ${figures(factors.level)} for the allowable level.`;
  const body = table<PressuresAnswer['heights'][number]>(
    'The wind by height',
    [
      { head: 'height', of: ({ height }) => inWords(height) },
      { head: 'exposure coefficient', of: ({ exposureCoefficient }) => figures(exposureCoefficient) },
      { head: 'topographic factor', of: ({ topographicFactor }) => figures(topographicFactor) },
      { head: 'velocity pressure', wind: true, of: ({ pressure }) => inWords(pressure) },
      { head: 'on effective area, allowable level', wind: true, of: ({ forcePerArea }) => inWords(forcePerArea) },
    ],
    answer.heights,
  );
  return partPage('The wind by height', lead, body, [...answer.notes, ...answer.entryWarnings]);
}

const span = ([low, high]: readonly Quantity[]) =>
  low === undefined || high === undefined || low.value === high.value
    ? low === undefined
      ? '–'
      : inWords(low)
    : `${figures(low.value)} to ${inWords(high)}`;

/** Ratings side by side as a page. */
export function ratingsPage(answer: RatingsAnswer): string {
  const body = table<RatingsAnswer['ratings'][number]>(
    'Ratings side by side',
    [
      { head: 'rating', of: ({ at, row }) => `${Number(at.split('/')[2]) + 1}${row > 0 ? `, row ${row + 1}` : ''}` },
      { head: 'force, allowable level', of: ({ force }) => span(force) },
      { head: 'effective area in the other wind', of: ({ equal }) => (equal === undefined ? '–' : span(equal)) },
      {
        head: 'standards tried',
        of: ({ readings }) => [...new Set(readings.map(({ method }) => METHOD_BY_ID[method].title))].join(', '),
      },
    ],
    answer.ratings,
  );
  return partPage('Ratings side by side', answer.says, body, [...answer.notes, ...answer.entryWarnings]);
}
