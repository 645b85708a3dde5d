/** What the service prints of the plan. */
import { documentOf } from './draft.mjs';
import * as store from './store.mjs';

/** Opens what the service prints of the plan in a window of its own. @param {string} address */
export function openPrinted(address) {
  const { document: plan } = documentOf(store.draft.value);
  const posted = document.createElement('form');
  posted.method = 'post';
  posted.action = address;
  posted.target = '_blank';
  const field = document.createElement('input');
  field.type = 'hidden';
  field.name = 'plan';
  field.value = JSON.stringify(plan);
  posted.append(field);
  document.body.append(posted);
  posted.submit();
  posted.remove();
}
