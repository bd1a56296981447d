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

// A line of the summary leads into its field.
for (const link of document.querySelectorAll('#faults a')) {
  link.addEventListener('click', event => {
    const target = document.getElementById(link.hash.slice(1));
    if (target) {
      event.preventDefault();
      target.closest('.parts')?.setAttribute('data-open', '');
      target.scrollIntoView({ block: 'center' });
      target.focus();
    }
  });
}

drawing(form);
