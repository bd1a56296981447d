// The page Explore: hands on sliders, light on pictures. Geometry asks the server for the light of
// each channel; dials are weighted sums here.
import * as light from './light.js';
import * as pictures from './pictures.js';
import { controls, pair } from './controls.js';
import { grips } from './grips.js';
import { upright } from './rig.js';
import { rockAt } from './rocks.js';
import { solid } from './solid.js';

const place = document.querySelector('[data-explore]');
if (place) {
  begin(place).catch(problem => {
    place.querySelector('[data-reading]').textContent = problem.message;
  });
}

async function begin(root) {
  const place = root.dataset.explore;
  const find = selector => root.querySelector(selector);
  const canvas = name => find(`[data-view="${name}"]`);
  const scene = await ask(`${place}/data/scene.json`);
  const cellsOf = lattice => lattice.columns * lattice.rows * lattice.layers;
  const fitted = root.dataset.fitted === 'true';

  const state = {
    rigs: {}, volumes: {}, fields: {}, lattice: scene.coarse, depth: scene.tank.depth / 2,
    band: scene.bands[0], scale: null, cross: {}, interval: null, turn: { a: 0, b: 0 },
    hands: {}, grips: {}, since: {}, busy: {}, again: {}, later: {},
  };
  const wanted = new URLSearchParams(location.search).get('rig');
  const first = scene.rigs.find(rig => rig.name === wanted) ?? scene.rigs[0];
  const readAt = scene.readings.find(reading => reading.rig === first.name) ?? scene.readings[0];
  if (readAt) {
    state.depth = readAt.depth;
  }
  find('[data-left-out]').textContent = scene.leftOut;

  for (const [id, key] of [['#rig', 'a'], ['#rig-b', 'b']]) {
    const select = find(id);
    scene.rigs.forEach(rig => select.add(new Option(rig.name, rig.name)));
    select.value = (key === 'a' ? first : scene.rigs[1] ?? first).name;
    select.addEventListener('change', () => take(key, select.value));
  }
  scene.bands.forEach((band, i) => find('#band').add(new Option(`${band.name}, ${band.from}–${band.to}`, i)));
  find('#band').addEventListener('change', event => {
    state.band = scene.bands[event.target.value];
    moved();
  });
  pair(find('#depth'), find('#depth-number'), {
    low: 0, high: scene.tank.depth, step: scene.unit === 'in' ? 0.25 : 0.5, unit: scene.unit, per: scene.perMetre,
    changed(value, when) {
      state.depth = value;
      hand('a', when);
      moved();
    },
  })(state.depth);
  for (const id of ['#mode', '#colours', '#lock']) {
    find(id).addEventListener('change', () => moved());
  }
  find('#compare').addEventListener('change', event => {
    find('[data-second]').hidden = !event.target.checked;
    for (const name of ['plan-b', 'difference']) {
      canvas(name).closest('figure').hidden = !event.target.checked;
    }
    find('[data-b]').hidden = !event.target.checked;
    if (event.target.checked && !state.rigs.b) {
      take('b', find('#rig-b').value);
    } else {
      moved();
    }
  });
  const comparing = () => find('#compare').checked && state.volumes.b;

  function take(key, name) {
    const begun = scene.rigs.find(rig => rig.name === name);
    const rig = structuredClone(begun);
    rig.hangings.forEach(h => { h.yaw = upright(h.yaw); });
    state.rigs[key] = rig;
    state.hands[key] = controls(find(`[data-rig="${key}"]`), {
      key, rig, begun, scene,
      moved(when) {
        hand(key, when);
        state.grips[key].place();
        geometry(key);
      },
      weighed(when) {
        hand(key, when);
        weigh(key);
      },
      chose: () => state.grips[key].place(),
    });
    geometry(key);
  }

  for (const key of ['a', 'b']) {
    state.grips[key] = grips(find(`[data-grips="${key}"]`), canvas(`plan-${key}`), {
      scene, rig: () => state.rigs[key], controls: () => state.hands[key],
      moved(when) {
        hand(key, when);
        geometry(key);
      },
      told: words => { find('[data-hung]').textContent = words; },
    });
  }

  /** Since when a hand waits for its picture. */
  function hand(key, when) {
    state.since[key] ??= when;
  }

  /** The rig hangs otherwise: its light is asked for, coarse while the hand moves, then fine. */
  async function geometry(key) {
    const turn = ++state.turn[key];
    clearTimeout(state.later[key]);
    if (state.busy[key]) {
      state.again[key] = true;
      return;
    }
    state.busy[key] = true;
    const field = await fetchField(key, false);
    state.busy[key] = false;
    if (field) {
      state.fields[key] = field;
      weigh(key);
    }
    if (state.again[key]) {
      state.again[key] = false;
      geometry(key);
      return;
    }
    state.later[key] = setTimeout(async () => {
      const fine = turn === state.turn[key] && await fetchField(key, true);
      // Meanwhile the hand may have moved on.
      if (fine && turn === state.turn[key]) {
        state.fields[key] = fine;
        weigh(key);
      }
    }, 250);
  }

  /** The light of a rig's channels; null with the reason on the page. */
  async function fetchField(key, fine) {
    const fault = find(`[data-fault="${key}"]`);
    try {
      const answer = await fetch(`${place}/data/field`, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify({ ...state.rigs[key], fine }),
      });
      if (!answer.ok) {
        throw new Error(sentence(await answer.json()));
      }
      const data = new Float32Array(await answer.arrayBuffer());
      fault.textContent = '';
      return { data, lattice: fine ? scene.fine : scene.coarse };
    } catch (problem) {
      fault.textContent = `The pictures show what was before: ${problem.message}`;
      return null;
    }
  }

  function weigh(key) {
    const field = state.fields[key];
    if (field) {
      state.volumes[key] = {
        lattice: field.lattice,
        values: light.summed(field.data, cellsOf(field.lattice), state.rigs[key], scene.fixtures),
      };
      moved();
    }
  }

  let drawing = 0;
  function moved() {
    state.interval = null;
    cancelAnimationFrame(drawing);
    drawing = requestAnimationFrame(draw);
    clearTimeout(state.rest);
    state.rest = setTimeout(settle, 700);
  }

  function planeOf(key) {
    const { values, lattice } = state.volumes[key];
    return light.plane(values, lattice, state.depth / scene.tank.depth);
  }

  function draw() {
    if (!state.volumes.a) {
      return;
    }
    const keys = comparing() ? ['a', 'b'] : ['a'];
    const planes = Object.fromEntries(keys.map(key => [key, planeOf(key)]));
    if (!find('#lock').checked || !state.scale) {
      const top = Math.max(...keys.map(key => light.figures(state.volumes[key].values).max));
      const step = light.roundStep(top || 1, 10);
      state.scale = { low: 0, high: Math.ceil(top / step) * step };
    }
    const common = { scene, scale: state.scale, map: find('#colours').value, band: state.band, mode: find('#mode').value, depth: state.depth };
    for (const key of keys) {
      const rig = state.rigs[key];
      pictures.plan(canvas(`plan-${key}`), {
        ...common, rig, of: planes[key], interval: key === 'a' ? state.interval : null, cross: state.cross.plan,
        readings: scene.readings.filter(r => Math.abs(r.depth - state.depth) < 0.011),
      });
    }
    const section = light.section(state.volumes.a.values, state.volumes.a.lattice);
    pictures.side(canvas('section'), { ...common, rig: state.rigs.a, of: section, cross: state.cross.section });
    if (state.band) {
      pictures.byDepth(canvas('coverage'), {
        scene, depth: state.depth,
        series: keys.map(key => light.coverageByDepth(state.volumes[key].values, state.volumes[key].lattice, state.band)),
      });
    }
    pictures.histogram(canvas('histogram'), { volumes: keys.map(key => state.volumes[key].values), scale: state.scale, bands: scene.bands });
    if (comparing()) {
      pictures.difference(canvas('difference'), { scene, a: planes.a, b: planes.b });
    }
    tell(keys, planes);
    state.solid?.update(state.volumes.a, state.rigs.a, state.depth, common);
    keys.forEach(key => state.grips[key].place());
    timed();
  }

  /** How long the hand waited: from its event to the moment after the frame with its picture. */
  function timed() {
    for (const key of ['a', 'b']) {
      const since = state.since[key];
      if (since !== undefined && !state.busy[key] && !state.again[key]) {
        state.since[key] = undefined;
        const shown = new MessageChannel();
        shown.port1.onmessage = () => (globalThis.parfieldTimes ??= []).push(performance.now() - since);
        shown.port2.postMessage(null);
      }
    }
  }

  const one = value => value.toFixed(value < 10 ? 1 : 0);
  const percent = share => (100 * share).toFixed(0);
  const shown = metres => +(metres * scene.perMetre).toFixed(1);

  /** One line for each picture, and the figures beside them. */
  function tell(keys, planes) {
    const deep = `${shown(state.depth)} ${scene.unit} deep`;
    const of = Object.fromEntries(keys.map(key => [key, light.figures(planes[key].values, state.band)]));
    keys.forEach(key => {
      const f = of[key];
      const share = state.band ? `, ${percent(f.coverage)} % in ${state.band.name}` : '';
      caption(`plan-${key}`, `${keys.length > 1 ? (key === 'a' ? 'First rig' : 'Second rig') : 'Seen from above'}, ${deep}: mean ${one(f.mean)}, ${one(f.min)} to ${one(f.max)} µmol m⁻² s⁻¹${share}.`);
    });
    const water = light.figures(state.volumes.a.values, state.band);
    caption('section', `Seen from the front, through the middle: up to ${one(light.figures(light.section(state.volumes.a.values, state.volumes.a.lattice).values).max)} µmol m⁻² s⁻¹.`);
    caption('coverage', state.band ? `Share of each depth in ${state.band.name}: ${percent(water.coverage)} % of all water.` : 'No band is stated.');
    caption('histogram', `PPFD in the water: mean ${one(water.mean)}, ${one(water.min)} to ${one(water.max)} µmol m⁻² s⁻¹.`);
    if (keys.length > 1) {
      caption('difference', `The second rig's mean is ${percent(of.b.mean / of.a.mean)} % of the first's, ${deep}.`);
    }
    const rows = [
      ['mean, µmol m⁻² s⁻¹', f => one(f.mean)], ['least', f => one(f.min)], ['greatest', f => one(f.max)],
      ['evenness U₀, %', f => percent(f.evenness)],
      ...(state.band ? [[`in ${state.band.name}, % of the plane`, f => percent(f.coverage)]] : []),
    ];
    const body = find('[data-figures] tbody');
    body.replaceChildren(...rows.map(([name, cell], i) => {
      const row = document.createElement('tr');
      row.append(td(name), td(cell(of.a), true), td(state.interval?.figures[i] ?? '…', true));
      if (keys.length > 1) {
        row.append(td(cell(of.b), true));
      }
      return row;
    }));
    find('[data-csv] input').value = JSON.stringify({ ...state.rigs.a, depth: state.depth });
    table(light.filled(planes.a));
    read();
  }

  function td(text, number) {
    const cell = document.createElement('td');
    cell.textContent = text;
    if (number) {
      cell.className = 'number';
    }
    return cell;
  }

  function caption(name, text) {
    find(`[data-caption="${name}"]`).textContent = text;
    canvas(name).setAttribute('aria-label', text);
  }

  function table(of) {
    const twin = find('[data-table]');
    if (!twin.closest('details').open) {
      return;
    }
    const columns = 10;
    const rows = 7;
    twin.caption.textContent = `PPFD in µmol m⁻² s⁻¹, ${shown(state.depth)} ${scene.unit} deep; x to the right, y down, in ${scene.unit}`;
    const head = document.createElement('tr');
    head.append(th('y \\ x'));
    const x = i => (i + 0.5) / columns;
    const y = j => (j + 0.5) / rows;
    for (let i = 0; i < columns; i++) {
      head.append(th(shown(x(i) * scene.tank.length)));
    }
    twin.tHead.replaceChildren(head);
    twin.tBodies[0].replaceChildren(...Array.from({ length: rows }, (_, j) => {
      const row = document.createElement('tr');
      row.append(th(shown(y(j) * scene.tank.width), 'row'));
      for (let i = 0; i < columns; i++) {
        row.append(td(at(of, x(i), y(j), state.depth), true));
      }
      return row;
    }));
  }

  /** A value as it is shown, or that a rock is there. */
  function at(of, u, v, depth, alongY = v) {
    const inside = rockAt(scene.rocks, u * scene.tank.length, alongY * scene.tank.width, depth);
    return inside ? 'rock' : one(light.valueAt(of, u, v));
  }

  function th(text, scope = 'col') {
    const cell = document.createElement('th');
    cell.scope = scope;
    cell.textContent = text;
    return cell;
  }
  find('[data-table]').closest('details').addEventListener('toggle', () => draw());

  /** The hand rests: the same plane from the server, with its intervals. */
  async function settle() {
    if (!fitted || !state.rigs.a) {
      find('[data-settled]').textContent = fitted ? '' : 'The distributions are stated, not fitted: no interval can be given.';
      return;
    }
    const asked = JSON.stringify({ ...state.rigs.a, depth: state.depth });
    find('[data-settled]').textContent = 'the interval is being computed …';
    const answer = await fetch(`${place}/data/figures`, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: asked });
    if (!answer.ok) {
      find('[data-settled]').textContent = `No interval can be given: ${sentence(await answer.json())}`;
      return;
    }
    if (asked !== JSON.stringify({ ...state.rigs.a, depth: state.depth })) {
      return;
    }
    const found = await answer.json();
    const plane = found.answer.planes[0];
    const interval = (of, factor = 1) => of ? `${one(factor * of.value)} (${one(factor * of.low)}–${one(factor * of.high)})` : '–';
    const share = (plane.coverage_of_plane ?? []).find(entry => entry.band === state.band?.name);
    const grid = values => ({ columns: found.columns, rows: found.rows, values: Float32Array.from(values) });
    state.interval = {
      low: grid(found.low), high: grid(found.high), best: grid(found.best),
      figures: [
        interval(plane.mean_umol_m2_s), interval(plane.min_umol_m2_s), interval(plane.max_umol_m2_s),
        interval(plane.evenness_u0, 100), interval(share?.inside, 100),
      ],
    };
    find('[data-settled]').textContent = 'Intervals run from 5 to 95 % and hold the meter\'s own scale error. No guarantee: measure once it hangs.';
    draw();
  }

  /** Places are read by pointer or by arrow keys. */
  for (const name of ['plan-a', 'plan-b', 'difference', 'section']) {
    const view = canvas(name);
    const kind = name === 'section' ? 'section' : 'plan';
    const to = (u, v) => {
      state.cross[kind] = { u: Math.max(0, Math.min(1, u)), v: Math.max(0, Math.min(1, v)) };
      cancelAnimationFrame(drawing);
      drawing = requestAnimationFrame(draw);
      state.last = kind;
    };
    view.parentElement.addEventListener('pointermove', event => {
      const box = view.getBoundingClientRect();
      const u = (event.clientX - box.left - view.plane.x) / view.plane.w;
      const v = (event.clientY - box.top - view.plane.y) / view.plane.h;
      if (event.buttons === 0 && u >= 0 && u <= 1 && v >= 0 && v <= 1) {
        to(u, kind === 'plan' ? 1 - v : v);
      }
    });
    view.addEventListener('keydown', event => {
      const step = event.shiftKey ? 0.05 : 0.01;
      const now = state.cross[kind] ?? { u: 0.5, v: 0.5 };
      const up = kind === 'plan' ? step : -step;
      const by = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, up], ArrowDown: [0, -up] }[event.key];
      if (by) {
        event.preventDefault();
        to(now.u + by[0], now.v + by[1]);
      }
    });
    view.addEventListener('focus', () => {
      const now = state.cross[kind] ?? { u: 0.5, v: 0.5 };
      to(now.u, now.v);
    });
  }

  function read() {
    const cross = state.cross[state.last];
    if (!cross) {
      return;
    }
    const { length, width, depth } = scene.tank;
    const level = state.last === 'plan';
    const of = light.filled(level ? planeOf('a') : light.section(state.volumes.a.values, state.volumes.a.lattice));
    const value = level ? at(of, cross.u, cross.v, state.depth) : at(of, cross.u, cross.v, cross.v * depth, 0.5);
    const where = level
      ? `x ${shown(cross.u * length)}, y ${shown(cross.v * width)}, depth ${shown(state.depth)} ${scene.unit}`
      : `x ${shown(cross.u * length)}, y ${shown(width / 2)}, depth ${shown(cross.v * depth)} ${scene.unit}`;
    const sure = level && state.interval
      ? ` (${one(light.valueAt(state.interval.low, cross.u, cross.v))}–${one(light.valueAt(state.interval.high, cross.u, cross.v))})` : '';
    const second = level && comparing() ? `; second rig ${one(light.valueAt(light.filled(planeOf('b')), cross.u, cross.v))}` : '';
    find('[data-reading]').textContent = `${where}: ${value === 'rock' ? 'rock' : `${value}${sure} µmol m⁻² s⁻¹${second}`}`;
  }

  find('#take').addEventListener('click', async () => {
    const answer = await post(`${place}/take`, { ...state.rigs.a, name: find('#rig-name').value });
    find('[data-told]').textContent = answer.rig ? `The setup has the rig ${answer.rig} now.` : sentence(answer);
  });
  find('#reference').addEventListener('click', async () => {
    const answer = await post(`${place}/reference`, { ...state.rigs.a, depth: state.depth });
    if (!answer.job) {
      find('[data-told]').textContent = sentence(answer);
      return;
    }
    const job = place.replace(/\/explore$/, `/jobs/${answer.job}`);
    const progress = find('[data-progress]');
    progress.hidden = false;
    const events = new EventSource(`${job}/events`);
    find('[data-stop]').onclick = () => fetch(`${job}/cancel`, { method: 'POST' });
    events.addEventListener('job', event => {
      const told = JSON.parse(event.data);
      find('[data-told]').textContent = told.problem || told.words;
      progress.querySelector('progress').value = told.share;
      if (['DONE', 'STOPPED', 'FAILED'].includes(told.state)) {
        events.close();
        progress.hidden = true;
      }
    });
  });

  find('[data-solid]').addEventListener('toggle', event => {
    if (event.target.open && !state.solid) {
      state.solid = solid(root, scene);
      draw();
    }
  });
  document.addEventListener('parfield:theme', () => draw());
  addEventListener('resize', () => draw());
  take('a', first.name);
}

/** What a refusal says, and what to do. */
function sentence(refusal) {
  return [refusal.title, ...(refusal.hints ?? []).map(hint => hint.message)].join('; ');
}

async function ask(address) {
  const answer = await fetch(address);
  const json = await answer.json();
  if (!answer.ok) {
    throw new Error(sentence(json));
  }
  return json;
}

async function post(address, body) {
  const answer = await fetch(address, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) });
  return answer.json();
}
