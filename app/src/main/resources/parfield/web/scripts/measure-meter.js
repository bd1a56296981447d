// The meter of a survey: what it shows, and its readings taken once they hold still. A rest is given out by the server, to one page and once; what is
// written then goes the way of every typed reading.
import { broken, follow, hasTarget, isTyping, say, takeNext } from './measure.js';
import { newId } from './measure-queue.js';

const base = document.getElementById('measure').dataset.base;
const at = id => document.getElementById(id);
const SETTINGS = 'parfield-meter-settings';
const NUDGE = 7000;
/** This page among all that are open: only one takes readings by itself. */
const page = newId();
const settings = { speed: 9600, port: '', ...JSON.parse(localStorage.getItem(SETTINGS) || '{}') };

let state = null;
let live = false;
let tried = 0;
let busy = false;
let nudge;
/** What the switch was just set to, until the server has answered; null otherwise. */
let wanted = null;

function keepSettings() {
  localStorage.setItem(SETTINGS, JSON.stringify(settings));
}

function words(id, text) {
  if (at(id).textContent !== text) at(id).textContent = text;
}

/** {answer} or {problem, status}; status 0 if the server is away. */
async function send(path, body) {
  let response;
  try {
    response = await fetch(`${base}/meter${path}`, {
      method: 'POST', headers: { 'Content-Type': 'application/json', Accept: 'application/json' }, body: JSON.stringify({ page, ...body }), keepalive: true,
    });
  } catch {
    return { status: 0, problem: 'The server is away: try again when it answers.' };
  }
  const answer = await response.json().catch(() => ({}));
  if (response.ok) return { status: response.status, answer };
  return { status: response.status, problem: [answer.title || `the server answered ${response.status}`, ...(answer.hints || []).map(hint => hint.message)].join('. ') };
}

const mine = () => state?.taker === page;

// What it shows.

function show(next) {
  const before = state;
  state = next;
  if (before && !before.away && next.away && next.source) say('The meter is silent.');
  if (next.state !== before?.state) {
    clearTimeout(nudge);
    if (next.state === 'WAITING' && mine()) nudge = setTimeout(() => say('Move the probe on. If the light is the same there, shade it for a moment.'), NUDGE);
  }
  follow(mine());
  draw();
  takeRest();
}

function draw() {
  if (!state) return;
  const connected = Boolean(state.source);
  words('meter-link', live ? state.link : 'The server is away, and the meter with it: type what it shows.');
  at('meter-live').hidden = !connected;
  words('meter-value', live && state.value ? state.value : '–');
  words('meter-words', live ? state.words : 'Not heard');
  at('meter').dataset.state = live ? (state.away ? 'AWAY' : state.state) : 'AWAY';
  at('meter-auto').checked = wanted ?? mine();
  at('meter-auto').disabled = !live;
  at('meter-take').disabled = !live || !state.value;
  words('meter-auto-words', autoWords());
  at('meter-water').value = state.rippled ? 'rippled' : 'calm';
  at('meter-field').value = String(state.field);
  at('meter-close').hidden = !state.port;
  const last = state.told[0];
  words('meter-ignored', !state.ignored ? '' : `${state.ignored} of ${state.ignored + state.numbers} lines not used${last ? `; the last: “${last.shown}”, as ${last.why}.` : '.'}`);
}

function autoWords() {
  if (!mine()) return state.taker ? 'Another page takes the readings. Switch on to take them here instead.' : 'Enter in the empty field takes what the meter shows.';
  if (!hasTarget()) return 'All places are read.';
  if (isTyping()) return 'You are typing: the meter waits.';
  return 'Hold the probe at the next place; move it on once the reading is taken.';
}

// Taking.

async function takeRest() {
  if (busy || !mine() || !state.hold || state.hold === tried || !hasTarget() || isTyping()) return;
  busy = true;
  const hold = state.hold;
  tried = hold;
  const { status, answer } = await send('/take', { hold });
  // Asked again, the server gives the same page the same reading: a lost answer loses nothing.
  if (status === 0 || status >= 500) tried = 0;
  if (answer) await enter(answer);
  busy = false;
}

async function takeNow() {
  if (busy || !hasTarget()) return;
  busy = true;
  words('meter-fault', '');
  const { answer, problem } = await send('/take', { hold: 0 });
  if (problem) {
    words('meter-fault', problem);
    say(problem);
  } else {
    await enter(answer);
  }
  busy = false;
}

async function enter(answer) {
  try {
    const taken = await takeNext(answer.typed, answer.origin);
    words('meter-fault', taken?.problem || '');
    words('entry-remark', taken?.number?.remark ? `${taken.number.remark}. It is kept; Undo takes it back.` : '');
  } catch (problem) {
    broken(problem);
  }
}

at('meter-take').addEventListener('click', takeNow);
document.addEventListener('submit', event => {
  if (event.target !== at('entry-form') || at('entry').value.trim() || !live || !state?.value) return;
  event.preventDefault();
  event.stopPropagation();
  takeNow();
}, true);

async function takerFrom(on) {
  wanted = on;
  const { answer, problem } = await send('/taker', { on, rippled: at('meter-water').value === 'rippled' });
  wanted = null;
  words('meter-fault', problem || '');
  if (answer) show(answer);
  else draw();
}

at('meter-auto').addEventListener('change', () => takerFrom(at('meter-auto').checked));
at('meter-water').addEventListener('change', () => send('/water', { rippled: at('meter-water').value === 'rippled' }).then(settle));
document.addEventListener('parfield:chosen', async () => {
  if (!mine()) return;
  // The rest that is offered now is over at once, whatever is still on its way.
  tried = state.hold || tried;
  const { answer } = await send('/wait', {});
  if (answer) show(answer);
});
window.addEventListener('pagehide', () => {
  if (mine()) send('/taker', { on: false });
});

function settle({ answer, problem }) {
  words('meter-port-fault', problem || '');
  if (answer) show(answer);
}

// Connecting.

function option(value, text, chosen) {
  const made = document.createElement('option');
  made.value = value;
  made.textContent = text;
  made.selected = chosen;
  return made;
}

async function look() {
  const response = await fetch(`${base}/meter/ports`).catch(() => null);
  if (!response?.ok) return;
  const { ports, trouble } = await response.json();
  const wanted = state?.port || settings.port;
  at('meter-port').replaceChildren(...(ports.length ? ports.map(port => option(port.path, port.description === port.path ? port.path : `${port.path} – ${port.description}`, port.path === wanted))
    : [option('', 'none found', true)]));
  at('meter-open').disabled = ports.length === 0;
  words('meter-port-fault', trouble || '');
}

at('meter-look').addEventListener('click', look);
at('meter-connect').addEventListener('toggle', () => {
  if (at('meter-connect').open) look();
});
at('meter-open').addEventListener('click', async () => {
  settings.port = at('meter-port').value;
  settings.speed = Number(at('meter-speed').value);
  keepSettings();
  settle(await send('/port', { port: settings.port, speed: settings.speed }));
});
at('meter-close').addEventListener('click', async () => settle(await send('/port', { port: '' })));
at('meter-field').replaceChildren(option('0', 'the number marked as PPFD, or the only one', true), ...Array.from({ length: 12 }, (_, k) => option(String(k + 1), `field ${k + 1} of the line`, false)));
at('meter-field').addEventListener('change', async () => settle(await send('/field', { field: Number(at('meter-field').value) })));
at('meter-copy').addEventListener('click', async () => {
  at('meter-example').select();
  try {
    await navigator.clipboard.writeText(at('meter-example').value);
    words('meter-copied', 'Copied');
  } catch {
    words('meter-copied', 'Selected: copy it with the keyboard');
  }
});

/** All that is known now; what comes later is told as events. */
async function ask() {
  const response = await fetch(`${base}/meter`).catch(() => null);
  if (!response?.ok) return;
  const told = await response.json();
  live = true;
  at('meter-speed').replaceChildren(...told.speeds.map(speed => option(String(speed), String(speed), speed === (told.speed || settings.speed))));
  at('meter-address').value = told.address;
  at('meter-here').hidden = !told.token;
  at('meter-there').hidden = Boolean(told.token);
  if (told.token) {
    at('meter-token').value = told.token;
    at('meter-example').value = `curl -H 'Authorization: Bearer ${told.token}' -H 'Content-Type: text/plain' --data-binary '123.4' ${told.address}`;
  }
  if (at('meter-connect').open) look();
  show(told.state);
}

document.addEventListener('parfield:meter', event => show(event.detail));
document.addEventListener('parfield:live', event => {
  live = event.detail;
  if (live) ask();
  else draw();
});
document.addEventListener('input', event => {
  if (event.target !== at('meter-auto')) draw();
});
ask();
