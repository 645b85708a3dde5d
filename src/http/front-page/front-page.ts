import { assess } from '../../margins/index.ts';
import { assetAddress } from '../../page/index.ts';
import { readPlan } from '../../plan/index.ts';
import { type CheckDocument, checkDocument, figures, type LinkDocument, useFigures } from '../../worksheet/index.ts';
import type { DemoPlan } from '../documents/reference-files.ts';
import { VERSION } from '../version.ts';

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => ENTITIES[sign] as string);
}

/** Bar and dot: the bar is what may be asked, the dot is what is asked. The word always stands beside it. */
const MARKS: Readonly<Record<LinkDocument['verdict'], string>> = {
  within: '<path d="M2 5h20"/><circle class="solid" cx="12" cy="16" r="3.5"/>',
  thin: '<path d="M2 5h20"/><circle class="solid" cx="12" cy="9.5" r="3.5"/>',
  over: '<path d="M2 17h20"/><path class="solid" d="M12 4l5 9H7z"/>',
  'not-shown': '<path class="dashed" d="M2 5h20"/><circle class="dashed" cx="12" cy="15" r="4"/>',
};

const WORDS: Readonly<Record<LinkDocument['verdict'], string>> = {
  within: 'within',
  thin: 'thin',
  over: 'over',
  'not-shown': 'not shown',
};

function mark(verdict: LinkDocument['verdict']): string {
  return `<svg class="mark ${verdict}" viewBox="0 0 24 24" aria-hidden="true" focusable="false">${MARKS[verdict]}</svg>`;
}

function linkRow(link: LinkDocument): string {
  const number = (value: { value: number; unit: string } | undefined) =>
    value === undefined ? '–' : `${figures(value.value, 4)} ${escaped(value.unit)}`;
  const use = link.use === undefined ? '–' : useFigures(link.use);
  const gust =
    link.holdsTo === undefined ? '–' : `${figures(link.holdsTo.gust.value)} ${escaped(link.holdsTo.gust.unit)}`;
  return `<tr><th scope="row">${escaped(link.title)}</th>
<td class="verdict word-${link.verdict}">${mark(link.verdict)}${WORDS[link.verdict]}</td>
<td class="number">${number(link.demand)}</td><td class="number">${number(link.capacity)}</td>
<td class="number">${use}</td><td class="number wind">${gust}</td></tr>`;
}

function cautionList(answer: CheckDocument, standing: boolean): string {
  return answer.cautions
    .filter((caution) => (caution.severity === 'standing') === standing)
    .map((caution) => `<li>${escaped(caution.says)} <span class="note">${escaped(caution.do)}</span></li>`)
    .join('\n');
}

/** The front page: the answer to a demo plan as the service itself gives it. */
export function frontPage(demo: DemoPlan, plans: readonly DemoPlan[]): string {
  const reading = readPlan(demo.plan);
  if (!reading.ok) throw new Error(`the demo plan ${demo.id} cannot be read`);
  const answer = checkDocument(assess(reading.inquiry), reading.document, reading.queries, 'none');
  const main = answer.soFar ?? answer.verdict;
  const questions = answer.toFindOut
    .map((question) => `<li>${escaped(question.ask)} <span class="note">${escaped(question.says)}</span></li>`)
    .join('\n');
  const others = plans
    .map(
      ({ id, title, says }) =>
        `<li><a href="/v1/demo-plans/${id}">${escaped(title)}</a> <span class="note">${escaped(says)}</span></li>`,
    )
    .join('\n');
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Gustworthy: does the tower take what hangs on it?</title>
<link rel="stylesheet" href="${assetAddress('sheet.css')}">
<link rel="stylesheet" href="/front-page.css">
</head>
<body>
<div class="sheet">
<header>
<div class="masthead"><span class="name">Gustworthy</span>
<nav aria-label="More"><a href="/openapi.json">Contract</a><a href="/v1/formulas">Formulas</a><a href="/v1/sources">Sources</a></nav></div>
<div class="title"><div><h1>${escaped(demo.title)}</h1><p>${escaped(demo.says)}</p></div>
<p class="standing">This compares numbers you typed with ratings you typed. The local building code and a licensed engineer decide. Ratings assume sound, correctly built, undamaged steel on the maker’s footing. Climbing, raising and power lines kill.</p></div>
</header>
<main>
<section aria-labelledby="so-far"><h2 id="so-far">So far</h2>
<p class="says">${mark(main)}${escaped(answer.says)}</p></section>
<section aria-labelledby="links"><h2 id="links">What gives first</h2>
<div class="scroll" tabindex="0" role="region" aria-label="Table of links"><table>
<thead><tr><th scope="col">link</th><th scope="col">verdict</th><th scope="col" class="number">demand</th><th scope="col" class="number">capacity</th><th scope="col" class="number">use</th><th scope="col" class="number">holds to, actual gust</th></tr></thead>
<tbody>
${answer.links.map(linkRow).join('\n')}
</tbody></table></div>
<p class="note">Forces at the allowable level, ${escaped(answer.design.title)}. Reaching a gust it holds to is not failure: 1.67 to yield is left.</p></section>
<div class="pair">
<section aria-labelledby="find"><h2 id="find">To find out</h2><ol class="list">${questions || '<li>Nothing is open.</li>'}</ol></section>
<section aria-labelledby="changes"><h2 id="changes">What changes the verdict</h2><ul class="list">${cautionList(answer, false)}</ul></section>
</div>
<section aria-labelledby="own"><h2 id="own">Your own plan</h2>
<p>A plan is one JSON document, which you keep. Post it and read the answer; nothing is stored here.</p>
<pre tabindex="0">curl -s localhost:8080/v1/demo-plans/${demo.id} -o plan.json
curl -s -H 'content-type: application/json' --data @plan.json 'localhost:8080/v1/checks?as=text'</pre>
<ul class="list">${others}</ul>
<p class="note">This page shows the answer to this plan:</p>
<pre tabindex="0">${escaped(JSON.stringify(demo.plan, null, 2))}</pre></section>
<div class="pair">
<section aria-labelledby="never"><h2 id="never">Never covered here</h2><ul class="list">${answer.notCovered.map((what) => `<li>${escaped(what)}</li>`).join('')}</ul></section>
<section aria-labelledby="who"><h2 id="who">Who decides</h2><ul class="list">${cautionList(answer, true)}</ul></section>
</div>
</main>
<footer><p class="note">Gustworthy ${escaped(VERSION)}. All demo plans are invented.</p></footer>
</div>
</body>
</html>
`;
}
