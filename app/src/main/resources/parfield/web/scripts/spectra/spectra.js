// What is asked follows the hand: each change asks for the answer anew and puts it in place. Numbers
// and pictures come from the server, from the same answers as on the command line.
const form = document.querySelector('[data-asked]');
const told = document.querySelector('p[data-told]');
const spoken = document.querySelector('[data-spoken]');
const busyAfter = 500;
const typingRests = 350;
const handRests = 450;
let running = null;
let again = false;
let resting = 0;

function address() {
  return `${form.getAttribute('action')}?${new URLSearchParams(new FormData(form))}`;
}

function putFaults(seen) {
  for (const field of document.querySelectorAll('[data-field]')) {
    const fault = seen.querySelector(`[data-fault-of="${CSS.escape(field.dataset.field)}"]`);
    const input = field.querySelector('input[name]');
    field.querySelector('[data-fault]').textContent = fault?.textContent ?? '';
    if (fault) {
      input.setAttribute('aria-invalid', 'true');
    } else {
      input.removeAttribute('aria-invalid');
    }
  }
}

function put(html) {
  const seen = document.querySelector('[data-seen]');
  const open = [...seen.querySelectorAll('details')].map(part => part.open);
  seen.innerHTML = html;
  [...seen.querySelectorAll('details')].forEach((part, i) => { part.open = open[i] ?? false; });
  putFaults(seen);
  told.textContent = seen.firstElementChild.dataset.told;
  clearTimeout(resting);
  resting = setTimeout(() => {
    spoken.textContent = seen.firstElementChild.dataset.summary;
  }, handRests);
}

// One request at a time; what changed meanwhile is asked for once it is back.
async function ask() {
  if (running) {
    again = true;
    return;
  }
  again = false;
  running = address();
  const seen = document.querySelector('[data-seen]');
  const busy = setTimeout(() => seen.setAttribute('aria-busy', 'true'), busyAfter);
  try {
    const answer = await fetch(running, { headers: { 'Parfield-Part': 'seen', Accept: 'text/html' } });
    if (answer.ok || answer.status === 422) {
      put(await answer.text());
      history.replaceState(null, '', running);
    } else {
      told.textContent = 'This was not answered. Load the page again; what is stored is kept.';
    }
  } catch {
    told.textContent = 'The server does not answer. Look whether it still runs, then move a slider again.';
  } finally {
    clearTimeout(busy);
    seen.removeAttribute('aria-busy');
    running = null;
    if (again) {
      ask();
    }
  }
}

// Where a page that is asked for anew goes on.
function keep(input) {
  sessionStorage.setItem('parfield-spectra-at', JSON.stringify([input.name, input.value, scrollY]));
}

let typing = 0;
const controls = document.querySelector('[data-controls]');
controls.addEventListener('input', event => {
  const input = event.target;
  if (input.hasAttribute('data-whole')) {
    return;
  }
  if (input.dataset.slides) {
    document.getElementById(input.dataset.slides).value = input.value;
    ask();
    return;
  }
  const slider = controls.querySelector(`[data-slides="${CSS.escape(input.id)}"]`);
  if (slider) {
    slider.value = input.value.replace(',', '.');
  }
  clearTimeout(typing);
  typing = setTimeout(ask, typingRests);
});
controls.addEventListener('change', event => {
  if (event.target.hasAttribute('data-whole')) {
    // Other channels have other dials: the page is asked for anew, without the old ones.
    if (event.target.dataset.whole === 'fresh') {
      for (const input of controls.querySelectorAll('input')) {
        input.disabled = /^(dial|full|low|high)-/.test(input.name);
      }
    }
    keep(event.target);
    form.requestSubmit();
  }
});

// Enter in a field asks at once, and does not press the first button of the form.
controls.addEventListener('keydown', event => {
  if (event.key === 'Enter' && event.target.matches('input')) {
    event.preventDefault();
    clearTimeout(typing);
    ask();
  }
});

// A choice of spectra changes what can be picked: the page is asked for anew, and one stays where one was.
const list = document.querySelector('[data-list]');
list.addEventListener('change', event => {
  if (event.target.form === form) {
    keep(event.target);
    form.requestSubmit();
  }
});
for (const all of list.querySelectorAll('[data-all]')) {
  all.hidden = false;
  all.addEventListener('click', () => {
    const boxes = [...all.closest('fieldset').querySelectorAll('input[type=checkbox]')];
    const on = boxes.some(box => !box.checked);
    for (const box of boxes) {
      box.checked = on;
    }
    keep(boxes[0]);
    form.requestSubmit();
  });
}
const kept = sessionStorage.getItem('parfield-spectra-at');
if (kept) {
  sessionStorage.removeItem('parfield-spectra-at');
  const [name, value, y] = JSON.parse(kept);
  const input = [...document.querySelectorAll('.spectra input:not([type=hidden]), .spectra select')]
    .find(each => each.name === name && (name !== 's' || each.value === value));
  input?.focus({ preventScroll: true });
  scrollTo(0, y);
}
document.querySelector('[data-show]').hidden = true;

document.querySelector('.steps [aria-current]')?.scrollIntoView({ block: 'nearest', inline: 'nearest' });

// On a phone the answer comes first: what was chosen already is folded.
if (matchMedia('(max-width: 760px)').matches && !kept) {
  for (const part of document.querySelectorAll('details[data-folds]')) {
    part.open = false;
  }
}

const drop = document.querySelector('[data-drop]');
const files = drop.querySelector('input[type=file]');
for (const kind of ['dragenter', 'dragover']) {
  drop.addEventListener(kind, event => {
    event.preventDefault();
    drop.classList.add('over');
  });
}
for (const kind of ['dragleave', 'drop']) {
  drop.addEventListener(kind, () => drop.classList.remove('over'));
}
function send() {
  drop.querySelector('[data-dropped]').textContent = 'Reading …';
  drop.requestSubmit();
}
drop.addEventListener('drop', event => {
  event.preventDefault();
  if (event.dataTransfer.files.length > 0) {
    files.files = event.dataTransfer.files;
    send();
  }
});
