// The setup's form: parts of a choice are seen when they are chosen, what is not stored is counted
// and asked for before it is left.
import { drawing } from '/scripts/setup-drawing.js';

const form = document.querySelector('[data-form]');
document.documentElement.classList.add('scripted');

for (const parts of form.querySelectorAll('[data-parts]')) {
  const choice = document.getElementById(parts.dataset.parts);
  choice.addEventListener('change', () => {
    parts.toggleAttribute('data-open', choice.value === 'as follows');
  });
}

const fields = [...form.querySelectorAll('input[name], select[name]')]
  .filter(field => field.type !== 'hidden');
const stored = new Map(fields.map(field => [field, field.value]));
const pending = form.querySelector('[data-pending]');
const refused = 'unsaved' in form.dataset;
let leaving = false;

function count() {
  const changed = fields.filter(field => field.value.trim() !== stored.get(field).trim()).length;
  pending.textContent = changed > 0
    ? `${changed} ${changed === 1 ? 'field' : 'fields'} changed, not stored yet`
    : refused ? 'What you typed is not stored yet' : '';
  return changed;
}

form.addEventListener('input', count);
form.addEventListener('submit', () => { leaving = true; });
addEventListener('beforeunload', event => {
  if (!leaving && (refused || count() > 0)) {
    event.preventDefault();
  }
});
addEventListener('pageshow', () => { leaving = false; count(); });

// What was unfolded stays unfolded when the page comes back after a save.
const key = `parfield-unfolded ${location.pathname.replace(/\/setup.*/, '')}`;
const kept = JSON.parse(sessionStorage.getItem(key) ?? '{}');
for (const entry of form.querySelectorAll('details.entry')) {
  if (entry.id in kept && !entry.querySelector('.fault, [aria-invalid=true]')) {
    entry.open = kept[entry.id];
  }
  entry.addEventListener('toggle', () => {
    kept[entry.id] = entry.open;
    sessionStorage.setItem(key, JSON.stringify(kept));
  });
}
function unfold(target) {
  for (let at = target?.closest('details'); at; at = at.parentElement.closest('details')) {
    at.open = true;
  }
}
const aimed = document.getElementById(location.hash.slice(1));
if (aimed) {
  unfold(aimed);
  const entries = aimed.querySelectorAll(':scope > details.entry');
  if (entries.length > 0 && performance.getEntriesByType('navigation')[0]?.type === 'navigate') {
    entries[entries.length - 1].open = true;
  }
  aimed.scrollIntoView();
}

// A line of the summary leads into its field.
for (const link of document.querySelectorAll('#faults a')) {
  link.addEventListener('click', event => {
    const target = document.getElementById(link.hash.slice(1));
    if (target) {
      event.preventDefault();
      target.closest('.parts')?.setAttribute('data-open', '');
      unfold(target);
      target.scrollIntoView({ block: 'center' });
      target.focus();
    }
  });
}

drawing(form);
