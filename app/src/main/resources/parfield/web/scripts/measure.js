// One survey while it is taken. What is shown is what the server has, with what waits in the queue laid over it.
import { Plan } from './measure-plan.js';
import { Queue, newId } from './measure-queue.js';
import { readNumber, shown } from './measure-number.js';

const root = document.getElementById('measure');
const base = root.dataset.base;
const DRIFT_AFTER = 8;
const SETTINGS = 'parfield-measure-settings';
const at = id => document.getElementById(id);

const state = {
  data: null, readings: new Map(), items: [], sequence: 0, canUndo: false, canRedo: false,
  depth: null, target: null, chosen: null, marks: new Map(), figures: null,
  away: false, problem: '', snoozed: 0, mapAt: '',
  settings: { way: 'serpentine', speak: false, ...keptSettings() },
};

function keptSettings() {
  try {
    return JSON.parse(localStorage.getItem(SETTINGS) || '{}');
  } catch {
    return {};
  }
}

function keepSettings() {
  localStorage.setItem(SETTINGS, JSON.stringify(state.settings));
}

// Words.

function length(metres) {
  return shown(metres / state.data.metres);
}

function place(point) {
  return `x ${length(point.x)}, y ${length(point.y)}, ${length(point.depth)} ${state.data.unit} deep`;
}

function spokenPlace(point) {
  const unit = state.data.unit === 'in' ? 'inches' : 'centimetres';
  return `x ${length(point.x)}, y ${length(point.y)}, ${length(point.depth)} ${unit} deep`;
}

export function say(words) {
  if (!state.settings.speak || !('speechSynthesis' in window)) return;
  speechSynthesis.cancel();
  const utterance = new SpeechSynthesisUtterance(words);
  utterance.lang = 'en';
  speechSynthesis.speak(utterance);
}

function element(name, attributes = {}, ...children) {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (key.startsWith('on')) made.addEventListener(key.slice(2), value);
    else if (value === true) made.setAttribute(key, '');
    else if (value !== false && value !== null && value !== undefined) made.setAttribute(key, value);
  }
  made.append(...children.filter(child => child !== null && child !== undefined));
  return made;
}

// What is known: the server's readings under what waits.

/** What waits, with undone writes left out. */
function pending() {
  const done = [];
  const undone = [];
  for (const item of state.items) {
    if (item.state !== 'waiting') continue;
    if (item.type === 'write') {
      done.push(item);
      undone.length = 0;
    } else if (item.type === 'undo' && done.length) {
      const group = done[done.length - 1].group;
      do undone.push(done.pop()); while (group && done.length && done[done.length - 1].group === group);
    } else if (item.type === 'redo' && undone.length) {
      done.push(undone.pop());
    }
  }
  return done;
}

function view() {
  const shownNow = new Map(state.readings);
  for (const item of pending()) {
    shownNow.set(item.reading, { ...shownNow.get(item.reading), ...item, value: item.withdrawn ? null : item.value, waiting: true });
  }
  return shownNow;
}

function conflicts() {
  return state.items.filter(item => item.state === 'conflict');
}

function apply(readings) {
  for (const reading of readings) {
    const known = state.readings.get(reading.reading);
    if (!known || known.revision <= reading.revision) state.readings.set(reading.reading, reading);
  }
}

const isDone = reading => reading && reading.value !== null && reading.value !== undefined;

// The way through the grid.

function way(depth) {
  const points = state.data.points.filter(point => Math.abs(point.depth - depth) < 1e-4);
  const byOrder = (a, b) => a.order - b.order;
  if (state.settings.way === 'columns') return points.sort((a, b) => a.x - b.x || b.y - a.y);
  if (state.settings.way === 'rows') return points.sort((a, b) => b.y - a.y || a.x - b.x);
  return points.sort(byOrder);
}

function depths() {
  return [...new Set(state.data.points.map(point => point.depth))];
}

function firstPoint() {
  return state.data.points.reduce((a, b) => (!a || b.order < a.order ? b : a), null);
}

function driftDue(now) {
  const first = firstPoint();
  if (!first || !isDone(now.get(first.reading))) return false;
  let last = now.get(first.reading).when;
  for (const reading of now.values()) if (reading.kind === 'DRIFT' && isDone(reading)) last = Math.max(last, reading.when);
  let since = 0;
  for (const reading of now.values()) if (reading.kind === 'GRID' && isDone(reading) && reading.when > last) since++;
  if (since < state.snoozed) state.snoozed = 0;
  return since - state.snoozed >= DRIFT_AFTER;
}

function sinceDrift(now) {
  const first = firstPoint();
  let last = now.get(first.reading)?.when || 0;
  for (const reading of now.values()) if (reading.kind === 'DRIFT') last = Math.max(last, reading.when);
  return [...now.values()].filter(reading => reading.kind === 'GRID' && isDone(reading) && reading.when > last).length;
}

/** The place after a point: the next unread one of its depth, else of the next depth; null if all are read. */
function after(point, now) {
  const all = depths();
  const from = point ? all.indexOf(point.depth) : all.indexOf(state.depth);
  for (let k = 0; k < all.length; k++) {
    const path = way(all[(Math.max(0, from) + k) % all.length]);
    const here = k === 0 && point ? path.findIndex(other => other.reading === point.reading) + 1 : 0;
    for (let i = 0; i < path.length; i++) {
      const next = path[(here + i) % path.length];
      if (!isDone(now.get(next.reading))) return { kind: 'GRID', point: next };
    }
  }
  return null;
}

function goOn(point) {
  const now = view();
  if (driftDue(now)) state.target = { kind: 'DRIFT', point: firstPoint(), then: point };
  else state.target = after(point, now);
  if (state.target && state.target.kind === 'GRID') state.depth = state.target.point.depth;
}

// Entering.

/** Whether something stands half typed, so that the place must stay as it is; and whether a place is left to read. */
export function isTyping() {
  return Boolean(at('entry').value || table.querySelector('input[data-typing]') || at('paste').open);
}

export function hasTarget() {
  return Boolean(state.data && state.target);
}

/** A place that is read by now is no longer next, unless a person chose it. */
function passOver() {
  const { target } = state;
  if (target?.kind !== 'GRID' || !isDone(view().get(target.point.reading)) || state.chosen === target.point.reading) return;
  goOn(target.point);
  if (!state.follows) return;
  if (state.target) say(`Read elsewhere. Next: ${spokenPlace(state.target.point)}`);
  chosenByHand();
}

/** While a meter takes readings by itself, the place that is next moves on when another page reads it. */
export function follow(on) {
  if (state.follows === on) return;
  state.follows = on;
  if (on && state.data) {
    passOver();
    draw();
  }
}

/** A person entered a value or chose another place: a meter must not take what it shows now for the place that is next. */
function chosenByHand() {
  document.dispatchEvent(new CustomEvent('parfield:chosen'));
}

const revisionOf = reading => state.readings.get(reading)?.revision || 0;

/** The revision that whoever enters a value has seen: what another page wrote since then is no base for it, and the person is asked. */
function knownFor(target) {
  return state.seen?.target === target ? state.seen.revision : revisionOf(target.point.reading);
}

/** The number of the latest item of the queue that this page shows. */
function lastItem() {
  return state.items.reduce((last, item) => Math.max(last, item.n), 0);
}

/** Takes a value for a place: it is on this machine's disk when this resolves. */
async function take(target, typed, number, origin, group) {
  const item = {
    survey: root.dataset.survey, base, type: 'write', id: newId(), reading: target.kind === 'DRIFT' ? newId() : target.point.reading,
    known: target.kind === 'DRIFT' ? 0 : target.known ?? knownFor(target), x: target.point.x, y: target.point.y, depth: target.point.depth, order: target.point.order,
    typed, value: number.value, withdrawn: false, origin, kind: target.kind, kept: false, when: Date.now(), group: group || '',
    seen: target.seen ?? (state.seen?.target === target ? state.seen.item : lastItem()),
  };
  await queue.add([item]);
  return item;
}

let taking = Promise.resolve();

/** Takes a value at the place that is next and goes on; for the keyboard and for a meter. One after the other: a value that comes while the one before is
 * being written belongs to the next place. */
export function takeNext(typed, origin) {
  const done = taking.then(() => takeOne(typed, origin));
  taking = done.catch(() => null);
  return done;
}

async function takeOne(typed, origin) {
  const target = state.target;
  if (!target) return null;
  const number = readNumber(typed);
  if (number.problem) return { problem: number.problem };
  await take(target, typed.trim(), number, origin);
  state.items = await queue.items();
  const left = target;
  goOn(target.kind === 'DRIFT' ? target.then : target.point);
  say(`${shown(number.value)}. ${state.target ? `Next: ${state.target.kind === 'DRIFT' ? 'the first place again, ' : ''}${spokenPlace(state.target.point)}` : 'All places are read.'}`);
  draw();
  return { number, target: left };
}

async function change(reading, changes) {
  const current = view().get(reading);
  await queue.add([{
    survey: root.dataset.survey, base, type: 'write', id: newId(), reading, known: state.readings.get(reading)?.revision || 0,
    x: current.x, y: current.y, depth: current.depth, order: current.order, typed: current.typed, value: current.value, withdrawn: false,
    origin: current.origin, kind: current.kind, kept: current.kept, when: Date.now(), group: '', ...changes,
  }]);
}

/** The number of the last change that this page knows: told by the server's events, or by its answers, which may come first. */
function lastKnown() {
  return [...state.readings.values()].reduce((last, reading) => Math.max(last, reading.sequence || 0), state.sequence);
}

/** Undo and redo say what this page knew: what somebody else changed since then is not taken back unseen. */
async function walk(type) {
  const before = state.items.filter(item => item.state === 'waiting' && item.base === base).pop();
  await queue.add([{ survey: root.dataset.survey, base, type, id: newId(), ...(before ? { after: before.id } : { known: lastKnown() }) }]);
}

// Drawing.

function stateOf(point, now) {
  if (conflicts().some(item => item.reading === point.reading)) return 'conflict';
  const reading = now.get(point.reading);
  if (!isDone(reading)) return 'open';
  if (reading.waiting) return 'waiting';
  return state.marks.has(point.reading) && !reading.kept ? 'marked' : 'done';
}

const STATE_WORDS = { open: 'to read', done: 'read, stored', waiting: 'read, not sent yet', marked: 'read, look again', conflict: 'two values: choose' };

function draw() {
  if (!state.data) return;
  const now = view();
  if (!state.target) goOn(null);
  else if (state.target.kind === 'GRID' && !state.data.points.some(point => point.reading === state.target.point.reading)) goOn(null);
  if (state.target && state.seen?.target !== state.target) state.seen = { target: state.target, revision: revisionOf(state.target.point.reading), item: lastItem() };
  drawSync();
  drawNext(now);
  drawPlan(now);
  drawTable(now);
  drawTroubles();
  drawFigures(now);
  drawMarks(now);
  drawReading(now);
  drawMap(now);
}

function drawSync() {
  const waiting = state.items.filter(item => item.state === 'waiting' && item.base === base).length;
  const sync = root.querySelector('.sync');
  const open = state.items.some(item => item.state !== 'waiting' && item.base === base);
  let words;
  if (state.broken) words = state.broken;
  else if (waiting === 0) words = state.live ? 'All stored' : 'All stored. The server is away: what you enter waits here.';
  else if (state.away) words = `${waiting} waiting on this device${state.problem ? `: ${state.problem}` : ': the server is away, they are sent as soon as it answers'}`;
  else words = `${waiting} on the way`;
  sync.dataset.state = state.broken || open ? 'trouble' : waiting ? 'waiting' : state.live ? 'stored' : 'away';
  if (at('sync-words').textContent !== words) at('sync-words').textContent = words;
}

function drawNext(now) {
  const { target } = state;
  const done = state.data.points.filter(point => isDone(now.get(point.reading))).length;
  at('next-count').textContent = `${done} of ${state.data.points.length} read`;
  at('later').hidden = target?.kind !== 'DRIFT';
  at('skip').hidden = target?.kind === 'DRIFT';
  at('skip').disabled = !target;
  at('undo').disabled = !(state.canUndo || pending().length);
  at('redo').disabled = !(state.canRedo || state.items.some(item => item.type === 'undo'));
  const heading = !target ? 'Done' : target.kind === 'DRIFT' ? 'The first place again, for drift' : isDone(now.get(target.point.reading)) ? 'Once more' : 'Next place';
  const words = !target ? 'All places are read.' : place(target.point);
  if (at('next-heading').textContent !== heading) at('next-heading').textContent = heading;
  if (at('next-place').textContent !== words) at('next-place').textContent = words;
  at('entry').disabled = !target;
}

function drawPlan(now) {
  if (!state.data.tank) return;
  const points = way(state.depth).map(point => ({ point, state: stateOf(point, now), value: shown(now.get(point.reading)?.value) }));
  const counts = {};
  for (const entry of points) counts[entry.state] = (counts[entry.state] || 0) + 1;
  const words = Object.entries(counts).map(([key, count]) => `${count} ${STATE_WORDS[key]}`).join('; ');
  at('plan-depth').textContent = `${length(state.depth)} ${state.data.unit} deep`;
  at('plan-words').textContent = words;
  plan.draw({ tank: state.data.tank, fixtures: state.data.fixtures, points, next: state.target?.point, words: `Tank from above, front at the bottom. ${words}` });
}

function axis(key) {
  return [...new Set(way(state.depth).map(point => Math.round(point[key] * 1e4) / 1e4))].sort((a, b) => a - b);
}

function drawTable(now) {
  const table = at('table');
  const points = way(state.depth);
  const shape = `${state.depth} ${points.map(point => point.reading).join()}`;
  const xs = axis('x');
  const ys = axis('y').reverse();
  if (table.dataset.shape !== shape) {
    table.dataset.shape = shape;
    const u = state.data.unit;
    const head = element('tr', {}, element('th', { scope: 'col' }, `y \\ x, ${u}`), ...xs.map(x => element('th', { scope: 'col', class: 'number' }, length(x))));
    const rows = ys.map((y, row) => element('tr', {}, element('th', { scope: 'row', class: 'number' }, length(y)), ...xs.map((x, column) => {
      const point = points.find(other => Math.abs(other.x - x) < 1e-3 && Math.abs(other.y - y) < 1e-3);
      if (!point) return element('td', { class: 'none' });
      const cell = element('input', {
        type: 'text', inputmode: 'decimal', enterkeyhint: 'next', autocomplete: 'off', 'data-reading': point.reading, 'data-row': row, 'data-column': column,
        'aria-label': `x ${length(x)}, y ${length(y)} ${u}`,
      });
      return element('td', {}, cell, element('span', { class: 'cell-state', 'aria-hidden': 'true' }));
    })));
    table.replaceChildren(
      element('caption', {}, `µmol m⁻² s⁻¹ as the meter showed it, ${length(state.depth)} ${u} deep`), element('thead', {}, head), element('tbody', {}, ...rows));
  }
  const signs = { open: '', done: '', waiting: '…', marked: '!', conflict: '?' };
  for (const cell of table.querySelectorAll('input')) {
    const point = points.find(other => other.reading === cell.dataset.reading);
    const kind = stateOf(point, now);
    const value = now.get(point.reading)?.value;
    const text = shown(value);
    if (!cell.dataset.typing && document.activeElement !== cell && cell.value !== text) cell.value = text;
    else if (document.activeElement === cell && !cell.dataset.typing) cell.value = text;
    cell.parentElement.dataset.state = kind;
    cell.parentElement.querySelector('.cell-state').textContent = signs[kind];
    if (!cell.dataset.typing) cell.title = STATE_WORDS[kind];
  }
}

function drawTroubles() {
  const open = state.items.filter(item => item.state !== 'waiting' && item.base === base);
  const box = at('troubles');
  box.hidden = open.length === 0;
  const key = open.map(item => `${item.n}${item.state}`).join();
  if (box.dataset.key === key) return;
  box.dataset.key = key;
  const refused = open.filter(item => item.type === 'write' && item.state === 'refused');
  box.replaceChildren(...(refused.length > 1 ? [element('div', { class: 'problem', role: 'alert' },
    element('p', {}, `${refused.length} readings are kept on this device alone.`),
    element('div', { class: 'tools' }, element('button', { type: 'button', onclick: () => allAgain(refused) }, `Send all ${refused.length} again`)))] : []), ...open.map(item => {
    if (item.type !== 'write') {
      return element('div', { class: 'problem' }, element('p', {}, `${item.type === 'undo' ? 'Undo' : 'Redo'} was refused: ${item.problem}`),
        element('button', { type: 'button', onclick: () => queue.remove([item.n]) }, 'Understood'));
    }
    const mine = item.withdrawn ? 'withdrawn' : item.typed;
    if (item.state === 'conflict') {
      const theirs = item.current ? (item.current.value === null ? 'withdrawn' : item.current.typed) : 'nothing';
      const who = item.current ? `${item.current.who} entered ${theirs} meanwhile` : 'the reading is gone';
      return element('div', { class: 'problem conflict-box', role: 'alert' },
        element('p', {}, element('strong', {}, place(item)), `: you entered ${mine}, ${who}. Both are kept until you choose.`),
        element('div', { class: 'tools' },
          element('button', { type: 'button', onclick: () => settle(item, true) }, `Take mine: ${mine}`),
          element('button', { type: 'button', onclick: () => settle(item, false) }, `Take theirs: ${theirs}`)));
    }
    return element('div', { class: 'problem', role: 'alert' },
      element('p', {}, element('strong', {}, place(item)), `: ${mine} is not stored. ${item.problem}`),
      element('div', { class: 'tools' },
        element('button', { type: 'button', onclick: () => again(item) }, 'Send again'),
        element('button', { type: 'button', onclick: () => queue.remove([item.n]) }, 'Leave it out')));
  }));
}

async function settle(item, mine) {
  const others = state.items.filter(other => other.reading === item.reading && other.state === 'conflict').map(other => other.n);
  if (mine) {
    const { n, current, problem, state: was, seen, ...rest } = item;
    await queue.add([{ ...rest, id: newId(), known: current?.revision || 0, group: '', when: Date.now() }]);
  }
  if (item.current) apply([item.current]);
  await queue.remove(others);
}

async function allAgain(items) {
  for (const item of items) await again(item);
}

async function again(item) {
  const { n, current, problem, state: was, seen, ...rest } = item;
  await queue.add([{ ...rest, id: newId(), known: state.readings.get(item.reading)?.revision || 0, group: '' }]);
  await queue.remove([n]);
}

function percent(share) {
  return `${Math.round(100 * share)} %`;
}

function whole(value) {
  return value >= 100 ? String(Math.round(value)) : String(Math.round(value * 10) / 10);
}

function drawFigures(now) {
  const box = at('figures');
  const figures = state.figures;
  const late = state.items.some(item => item.state === 'waiting') && state.away;
  const key = JSON.stringify([figures, late, state.depth]);
  if (box.dataset.key === key) return;
  box.dataset.key = key;
  if (!figures?.all) {
    box.replaceChildren(element('p', { class: 'muted' }, 'Figures appear with the first stored reading.'));
    at('drift').replaceChildren();
    return;
  }
  const here = figures.depths.find(depth => Math.abs(depth.depth - state.depth) < 1e-3);
  const columns = [['All depths', figures.all], ...(figures.depths.length > 1 || !here ? (here ? [[`${length(state.depth)} ${state.data.unit} deep`, here]] : []) : [])];
  const line = (name, of) => element('tr', {}, element('th', { scope: 'row' }, name), ...columns.map(([, column]) => element('td', { class: 'number' }, of(column))));
  const table = element('table', { class: 'figure-table' },
    element('caption', {}, 'PPFD in µmol m⁻² s⁻¹, bands as a share of the readings'),
    element('thead', {}, element('tr', {}, element('th', { scope: 'col' }, element('span', { class: 'hidden-text' }, 'Figure')),
      ...columns.map(([name]) => element('th', { scope: 'col', class: 'number' }, name)))),
    element('tbody', {},
      line('Mean', f => whole(f.mean)),
      line('Least', f => whole(f.min)),
      line('Most', f => whole(f.max)),
      line('Evenness U₀, least over mean', f => (Math.round(f.evenness * 100) / 100).toFixed(2)),
      ...figures.all.bands.map((band, k) => line(`In ${band.name}, ${shown(band.from)}–${shown(band.to)}`, f => percent(f.bands[k].inside)))));
  const left = figures.left === 0 ? 'Every place of the grid is read.'
    : `${figures.left} of ${figures.points} places left${figures.minutes ? `, ${figures.minutes < 1 ? 'less than a minute' : `about ${Math.round(figures.minutes)} min`} at this pace` : ''}.`;
  box.replaceChildren(table, element('p', {}, left), ...(late ? [element('p', { class: 'muted' }, 'Readings that wait are not in these figures yet.')] : []));
  at('drift').replaceChildren(...(figures.drift ? [element('p', { class: figures.drift.clear ? 'caution' : 'muted' }, `Drift: ${figures.drift.words}`)] : []));
}

function drawMarks(now) {
  const rows = [...state.marks].map(([id, reason]) => ({ id, reason, reading: now.get(id) })).filter(row => isDone(row.reading));
  const open = rows.filter(row => !row.reading.kept);
  const key = JSON.stringify(rows.map(row => [row.id, row.reason, row.reading.value, row.reading.kept]));
  if (at('marks').dataset.key === key) return;
  at('marks').dataset.key = key;
  if (open.length === 0) {
    at('marks').replaceChildren(element('p', { class: 'muted' }, rows.length ? `${rows.length} looked at and kept.` : 'No reading looks wrong.'));
    return;
  }
  at('marks').replaceChildren(element('ul', { class: 'mark-list' }, ...open.map(row => element('li', {},
    element('p', {}, element('strong', {}, `${place(row.reading)}: ${row.reading.typed}`), element('br'), row.reason),
    element('div', { class: 'tools' },
      element('button', { type: 'button', onclick: () => choose(row.reading) }, 'Read again'),
      element('button', { type: 'button', onclick: () => change(row.id, { kept: true }) }, 'Looked at, keep'))))));
}

function drawMap(now) {
  const stored = [...state.readings.values()].filter(reading => isDone(reading) && reading.kind === 'GRID');
  const key = `${state.depth} ${stored.map(reading => `${reading.reading}${reading.value}`).join()}`;
  if (state.mapAt === key) return;
  state.mapAt = key;
  clearTimeout(state.mapTimer);
  state.mapTimer = setTimeout(async () => {
    const response = await fetch(`${base}/map?depth=${state.depth}`).catch(() => null);
    if (!response?.ok || state.mapAt !== key) return;
    const text = response.status === 204 ? '' : await response.text();
    if (state.mapAt !== key) return;
    if (!text) {
      at('map').replaceChildren(element('p', { class: 'muted' }, 'The map appears from 4 readings of this depth on that do not stand in one line.'));
      return;
    }
    const picture = element('img', { alt: `PPFD between the readings, ${length(state.depth)} ${state.data.unit} deep; the readings stand in the table below`, src: `data:image/svg+xml,${encodeURIComponent(text)}` });
    at('map').replaceChildren(picture);
  }, 120);
}

// One reading: who, when, what it was before.

const ORIGINS = { TYPED: 'typed', PASTED: 'pasted', SERIAL: 'from the meter', POSTED: 'sent by a meter', IMPORTED: 'from a file' };

function drawReading(now) {
  const box = at('reading');
  const reading = state.chosen && now.get(state.chosen);
  box.hidden = !reading;
  if (!reading) return;
  const key = JSON.stringify([reading.reading, reading.revision, reading.value, reading.waiting, reading.kept, state.marks.get(reading.reading), state.history?.length]);
  if (box.dataset.key === key) return;
  box.dataset.key = key;
  const mark = state.marks.get(reading.reading);
  const buttons = [element('button', { type: 'button', onclick: () => history(reading.reading) }, 'History')];
  if (isDone(reading)) {
    buttons.unshift(element('button', { type: 'button', onclick: () => change(reading.reading, { withdrawn: true, typed: '', value: null, kept: false }) }, 'Withdraw'));
    if (mark && !reading.kept) buttons.unshift(element('button', { type: 'button', onclick: () => change(reading.reading, { kept: true }) }, 'Looked at, keep'));
  }
  at('reading-body').replaceChildren(
    element('p', {}, element('strong', {}, place(reading)), `: ${isDone(reading) ? `${reading.typed} µmol m⁻² s⁻¹` : 'withdrawn'}, ${ORIGINS[reading.origin]}, ${reading.waiting ? 'not sent yet' : `by ${reading.who}, ${new Date(reading.when).toLocaleString()}`}`),
    ...(mark ? [element('p', { class: 'caution' }, mark)] : []),
    element('div', { class: 'tools' }, ...buttons),
    ...(state.history && state.historyOf === reading.reading ? [element('table', {}, element('caption', {}, 'All that it was, the latest first'),
      element('thead', {}, element('tr', {}, ...['When', 'Who', 'Value', 'Why'].map(title => element('th', { scope: 'col' }, title)))),
      element('tbody', {}, ...state.history.map(revision => element('tr', {},
        element('td', {}, new Date(revision.when).toLocaleString()), element('td', {}, revision.who), element('td', {}, revision.value === null ? 'withdrawn' : revision.typed),
        element('td', {}, revision.cause === 'WRITE' ? ORIGINS[revision.origin] : revision.cause === 'UNDO' ? 'taken back' : 'brought back')))))] : []));
}

async function history(reading) {
  const response = await fetch(`${base}/history/${reading}`).catch(() => null);
  if (!response?.ok) return;
  state.history = (await response.json()).revisions.reverse();
  state.historyOf = reading;
  at('reading').dataset.key = '';
  draw();
}

function choose(point) {
  const real = state.data.points.find(other => other.reading === point.reading);
  if (real) state.target = { kind: 'GRID', point: real };
  state.depth = point.depth;
  state.chosen = point.reading;
  state.history = null;
  at('depth').value = String(state.depth);
  at('entry').focus();
  chosenByHand();
  draw();
}

// The hand: field, table, keys, paste.

at('entry-form').addEventListener('submit', async event => {
  event.preventDefault();
  const entry = at('entry');
  const typed = entry.value;
  const number = readNumber(typed);
  at('entry-fault').textContent = number.problem || '';
  entry.toggleAttribute('aria-invalid', Boolean(number.problem));
  if (number.problem) {
    say(number.problem);
    return;
  }
  try {
    chosenByHand();
    entry.value = '';
    await takeNext(typed, 'TYPED');
    at('entry-remark').textContent = number.remark ? `${number.remark}. It is kept; Undo takes it back.` : '';
  } catch (problem) {
    if (!entry.value) entry.value = typed;
    broken(problem);
  }
  entry.focus();
});

at('entry').addEventListener('input', () => {
  at('entry-fault').textContent = '';
  at('entry').removeAttribute('aria-invalid');
});

export function broken(problem) {
  state.broken = `This browser cannot keep readings (${problem?.message || problem}): free some room on this device or use another browser. What you typed stays in the field.`;
  drawSync();
}

const table = at('table');

async function commit(cell) {
  if (!cell.dataset.typing) return true;
  const point = state.data.points.find(other => other.reading === cell.dataset.reading);
  const current = view().get(point.reading);
  const fault = at('table-fault');
  if (!cell.value.trim()) {
    delete cell.dataset.typing;
    if (isDone(current)) await change(point.reading, { withdrawn: true, typed: '', value: null, kept: false });
    cell.removeAttribute('aria-invalid');
    return true;
  }
  const number = readNumber(cell.value);
  if (number.problem) {
    cell.setAttribute('aria-invalid', 'true');
    cell.setAttribute('aria-describedby', 'table-fault');
    fault.textContent = `${cell.getAttribute('aria-label')}: ${number.problem}`;
    return false;
  }
  cell.removeAttribute('aria-invalid');
  cell.removeAttribute('aria-describedby');
  fault.textContent = number.remark ? `${cell.getAttribute('aria-label')}: ${number.remark}. It is kept.` : '';
  const typed = cell.value.trim();
  chosenByHand();
  delete cell.dataset.typing;
  if (isDone(current) && current.value === number.value) return true;
  try {
    await take({ kind: 'GRID', point, known: Number(cell.dataset.known), seen: Number(cell.dataset.seen) }, typed, number, 'TYPED');
  } catch (problem) {
    cell.dataset.typing = '1';
    broken(problem);
    return false;
  }
  return true;
}

table.addEventListener('input', event => {
  if (!event.target.dataset.typing) event.target.dataset.known = revisionOf(event.target.dataset.reading);
  if (!event.target.dataset.typing) event.target.dataset.seen = lastItem();
  event.target.dataset.typing = '1';
});
table.addEventListener('focusin', event => {
  if (!event.target.matches('input')) return;
  event.target.select();
  state.chosen = event.target.dataset.reading;
});
table.addEventListener('focusout', async event => {
  if (event.target.matches('input')) {
    await commit(event.target);
    if (state.target?.kind === 'GRID' && isDone(view().get(state.target.point.reading))) goOn(state.target.point);
    draw();
  }
});

function move(cell, down, right) {
  let row = Number(cell.dataset.row);
  let column = Number(cell.dataset.column);
  for (let step = 0; step < 200; step++) {
    row += down;
    column += right;
    const next = table.querySelector(`input[data-row="${row}"][data-column="${column}"]`);
    if (next) {
      next.focus();
      return true;
    }
    if (row < 0 || row > 200 || column < 0 || column > 200) return false;
  }
  return false;
}

table.addEventListener('keydown', event => {
  const cell = event.target;
  if (!cell.matches('input') || event.ctrlKey || event.metaKey || event.altKey) return;
  const all = cell.selectionStart === 0 && cell.selectionEnd === cell.value.length;
  const keys = {
    ArrowUp: [-1, 0], ArrowDown: [1, 0],
    ArrowLeft: all || cell.selectionEnd === 0 ? [0, -1] : null,
    ArrowRight: all || cell.selectionStart === cell.value.length ? [0, 1] : null,
  };
  if (keys[event.key]) {
    event.preventDefault();
    move(cell, ...keys[event.key]);
  } else if (event.key === 'Enter') {
    event.preventDefault();
    const path = way(state.depth);
    const here = path.findIndex(point => point.reading === cell.dataset.reading);
    const next = event.shiftKey ? path[here - 1] : path[here + 1];
    if (next) table.querySelector(`input[data-reading="${next.reading}"]`)?.focus();
    else cell.blur();
  } else if (event.key === 'Escape' && cell.dataset.typing) {
    delete cell.dataset.typing;
    cell.value = shown(view().get(cell.dataset.reading)?.value);
  }
});

document.addEventListener('keydown', event => {
  if (!(event.ctrlKey || event.metaKey) || event.altKey || at('paste').open) return;
  const typing = document.activeElement?.matches('input, textarea') && (document.activeElement.dataset.typing || (document.activeElement === at('entry') && at('entry').value));
  if (typing) return;
  const key = event.key.toLowerCase();
  if (key === 'z' && !event.shiftKey) {
    event.preventDefault();
    at('undo').click();
  } else if (key === 'y' || (key === 'z' && event.shiftKey)) {
    event.preventDefault();
    at('redo').click();
  }
});

at('undo').addEventListener('click', () => walk('undo'));
at('redo').addEventListener('click', () => walk('redo'));
at('skip').addEventListener('click', () => {
  const path = way(state.depth);
  const here = path.findIndex(point => point.reading === state.target.point.reading);
  const now = view();
  for (let i = 1; i <= path.length; i++) {
    const next = path[(here + i) % path.length];
    if (!isDone(now.get(next.reading))) {
      state.target = { kind: 'GRID', point: next };
      break;
    }
  }
  say(spokenPlace(state.target.point));
  at('entry').focus();
  chosenByHand();
  draw();
});
at('later').addEventListener('click', () => {
  state.snoozed = sinceDrift(view());
  goOn(state.target?.then || null);
  at('entry').focus();
  chosenByHand();
  draw();
});
at('depth').addEventListener('change', () => {
  state.depth = Number(at('depth').value);
  const now = view();
  const next = way(state.depth).find(point => !isDone(now.get(point.reading)));
  if (next) state.target = { kind: 'GRID', point: next };
  chosenByHand();
  draw();
});
at('way').addEventListener('change', () => {
  state.settings.way = at('way').value;
  keepSettings();
  const now = view();
  const next = way(state.depth).find(point => !isDone(now.get(point.reading)));
  if (next) state.target = { kind: 'GRID', point: next };
  chosenByHand();
  draw();
});
at('speak').addEventListener('change', () => {
  state.settings.speak = at('speak').checked;
  keepSettings();
  if (state.target) say(spokenPlace(state.target.point));
});

// A pasted block: shown first, entered by one confirmation.

let preview = null;
let pasteStart = null;

function isBlock(text) {
  return /[\t;\n]/.test(text.trim());
}

document.addEventListener('paste', event => {
  const field = event.target;
  if (field.id === 'paste-text') return;
  const text = event.clipboardData?.getData('text/plain') || '';
  if (!isBlock(text) || !root.contains(field)) return;
  event.preventDefault();
  openPaste(text, field.dataset?.reading || null);
});

function openPaste(text, start) {
  pasteStart = start;
  at('paste-text').value = text;
  at('paste').showModal();
  at('paste-text').focus();
  look();
}

let lookTimer;
function look() {
  clearTimeout(lookTimer);
  lookTimer = setTimeout(lookNow, 150);
}

async function lookNow() {
  const text = at('paste-text').value;
  const box = at('paste-preview');
  preview = null;
  at('paste-confirm').disabled = true;
  if (!text.trim()) {
    box.replaceChildren();
    return;
  }
  const now = view();
  const path = way(state.depth);
  const here = state.target ? Math.max(0, path.findIndex(point => point.reading === state.target.point.reading)) : 0;
  const rest = [...path.slice(here), ...path.slice(0, here)].filter(point => !isDone(now.get(point.reading))).map(point => point.reading);
  let response;
  try {
    response = await fetch(`${base}/paste`, {
      method: 'POST', headers: { 'Content-Type': 'application/json', Accept: 'application/json' },
      body: JSON.stringify({ text, depth: state.depth, way: rest, start: pasteStart, comma: at('paste-comma').value, frontFirst: at('paste-front').checked }),
    });
  } catch {
    box.replaceChildren(element('p', { class: 'problem' }, 'The server is away, and the preview needs it. The block stays here: try again when it answers.'));
    return;
  }
  const answer = await response.json();
  if (text !== at('paste-text').value) return;
  if (!response.ok) {
    box.replaceChildren(element('p', { class: 'problem' }, answer.title));
    return;
  }
  at('comma-field').hidden = !answer.commas;
  preview = answer.cells;
  at('paste-confirm').disabled = preview.length === 0;
  at('paste-confirm').textContent = preview.length === 1 ? 'Enter this 1 value' : `Enter these ${preview.length} values`;
  const byId = new Map(state.data.points.map(point => [point.reading, point]));
  box.replaceChildren(element('p', {}, answer.layout),
    ...(answer.problems.length ? [element('div', { class: 'caution' }, element('p', {}, 'Left out:'), element('ul', {}, ...answer.problems.map(text => element('li', {}, text))))] : []),
    ...(preview.length ? [element('div', { class: 'scroll preview-scroll', tabindex: '0', role: 'region', 'aria-label': 'Preview' }, element('table', {},
      element('caption', {}, 'What goes where'),
      element('thead', {}, element('tr', {}, ...['Place', 'Value', 'Now there', 'Remark'].map(title => element('th', { scope: 'col' }, title)))),
      element('tbody', {}, ...preview.map(cell => element('tr', {},
        element('td', {}, place(byId.get(cell.reading))), element('td', { class: 'number' }, shown(cell.value)),
        element('td', { class: 'number' }, shown(now.get(cell.reading)?.value) || '–'), element('td', {}, cell.remark))))))] : []));
}

for (const id of ['paste-text', 'paste-front', 'paste-comma']) at(id).addEventListener('input', look);
at('paste-open').addEventListener('click', () => openPaste('', null));
at('paste-confirm').addEventListener('click', async () => {
  const byId = new Map(state.data.points.map(point => [point.reading, point]));
  const group = newId();
  const when = Date.now();
  try {
    await queue.add(preview.map(cell => {
      const point = byId.get(cell.reading);
      return {
        survey: root.dataset.survey, base, type: 'write', id: newId(), reading: cell.reading, known: state.readings.get(cell.reading)?.revision || 0,
        x: point.x, y: point.y, depth: point.depth, order: point.order, typed: cell.typed, value: cell.value, withdrawn: false, origin: 'PASTED', kind: 'GRID',
        kept: false, when, group,
      };
    }));
  } catch (problem) {
    broken(problem);
    return;
  }
  chosenByHand();
  at('paste-text').value = '';
  at('paste').close();
  state.items = await queue.items();
  goOn(state.target?.point || null);
  draw();
});

// The server: what it has now, and every change from now on.

const plan = new Plan(at('plan'), choose);

const queue = new Queue({
  onChange: async () => {
    state.items = await queue.items();
    if (state.data && document.activeElement !== at('entry')) passOver();
    draw();
  },
  onSaved: (readings, of) => {
    if (of === base) apply(readings);
  },
  onState: ({ away, problem }) => {
    state.away = away;
    state.problem = problem || '';
    drawSync();
  },
});

function take0(data) {
  state.data = data;
  state.sequence = data.sequence;
  state.canUndo = data.canUndo;
  state.canRedo = data.canRedo;
  state.figures = data.figures;
  if (data.marks) state.marks = new Map(data.marks.map(mark => [mark.reading, mark.reason]));
  apply(data.readings);
  const all = depths();
  if (!all.includes(state.depth)) state.depth = all[0];
  at('depth').replaceChildren(...all.map(depth => element('option', { value: String(depth), selected: depth === state.depth }, `${length(depth)} ${data.unit}`)));
  at('way').value = state.settings.way;
  at('speak').checked = state.settings.speak;
}

/**
 * A server that knows less than this page had from it stands on an older copy of its workspace. What it has is what holds; what this page still knows
 * beyond that is put aside, and a person decides whether it is sent again.
 */
async function takeOlder(data) {
  const there = new Map(data.readings.map(reading => [reading.reading, reading]));
  const known = [...state.readings.values()];
  if (data.sequence >= lastKnown() && !known.some(reading => reading.revision > (there.get(reading.reading)?.revision || 0))) return false;
  await queue.putAside(known.filter(reading => isDone(reading) && reading.value !== there.get(reading.reading)?.value).map(reading => ({
    survey: root.dataset.survey, base, type: 'write', id: newId(), reading: reading.reading, x: reading.x, y: reading.y, depth: reading.depth,
    order: reading.order, typed: reading.typed, value: reading.value, withdrawn: false, origin: reading.origin, kind: reading.kind, kept: reading.kept,
    when: reading.when, group: '', problem: 'It was stored once, and the workspace no longer has it: was an older copy of it restored?',
  })));
  state.items = await queue.items();
  state.readings = there;
  state.target = null;
  return true;
}

/** Keeps what is known for the next time this page opens without the server. */
function keepPage() {
  clearTimeout(state.keeping);
  state.keeping = setTimeout(() => queue.keepPage(base, { ...state.data, sequence: state.sequence, figures: state.figures, readings: [...state.readings.values()] }).catch(broken), 300);
}

let retry = 1000;

function listen() {
  let first = true;
  const source = new EventSource(`${base}/events?since=${state.sequence}`);
  source.addEventListener('ready', () => {
    retry = 1000;
    state.live = true;
    document.dispatchEvent(new CustomEvent('parfield:live', { detail: true }));
    queue.send();
    drawSync();
  });
  source.addEventListener('changes', async event => {
    const changes = JSON.parse(event.data);
    const older = first && changes.sequence < lastKnown();
    first = false;
    if (older) {
      const response = await fetch(`${base}/data`).catch(() => null);
      if (!response?.ok || response.headers.has('X-Parfield-Kept')) return;
      const data = await response.json();
      await takeOlder(data);
      take0(data);
      keepPage();
      draw();
      return;
    }
    apply(changes.readings);
    state.sequence = changes.sequence;
    state.canUndo = changes.canUndo;
    state.canRedo = changes.canRedo;
    keepPage();
    if (document.activeElement !== at('entry') || state.follows) passOver();
    draw();
  });
  source.addEventListener('figures', event => {
    state.figures = JSON.parse(event.data);
    draw();
  });
  source.addEventListener('marks', event => {
    state.marks = new Map(JSON.parse(event.data).marks.map(mark => [mark.reading, mark.reason]));
    draw();
  });
  source.addEventListener('meter', event => document.dispatchEvent(new CustomEvent('parfield:meter', { detail: JSON.parse(event.data) })));
  source.onerror = () => {
    source.close();
    state.live = false;
    document.dispatchEvent(new CustomEvent('parfield:live', { detail: false }));
    drawSync();
    setTimeout(listen, retry);
    retry = Math.min(15000, retry * 2);
  };
}

async function start() {
  try {
    await queue.open();
    state.items = await queue.items();
  } catch (problem) {
    broken(problem);
    throw problem;
  }
  const kept = await queue.page(base);
  try {
    const response = await fetch(`${base}/data`);
    if (!response.ok) throw new Error((await response.json()).title);
    const data = await response.json();
    apply(kept?.readings || []);
    state.sequence = kept?.sequence || 0;
    if (!response.headers.has('X-Parfield-Kept')) await takeOlder(data);
    take0(data);
    keepPage();
  } catch (problem) {
    if (!kept) {
      at('sync-words').textContent = `The survey could not be opened: ${problem.message}. Reload the page when the server answers.`;
      return;
    }
    take0(kept);
  }
  if (state.data.points.length === 0) return;
  draw();
  listen();
  queue.send();
  if (matchMedia('(pointer: fine)').matches) at('entry').focus({ preventScroll: true });
}

if ('serviceWorker' in navigator && window.isSecureContext) {
  navigator.serviceWorker.register('/measure-worker.js', { scope: '/bench/' }).then(() => navigator.serviceWorker.ready).then(async () => {
    // What this page was made of before the worker was there; the worker keeps what comes after.
    const store = await caches.open('parfield-measure-1');
    const files = performance.getEntriesByType('resource').map(entry => new URL(entry.name))
      .filter(url => url.origin === location.origin && /^\/(scripts|styles|libraries)\//.test(url.pathname)).map(url => url.pathname);
    await Promise.all([location.pathname, `${base}/data`, ...files].map(path => store.match(path).then(known => known || store.add(path))));
  }).catch(() => null);
}

start();
