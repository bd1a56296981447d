// The page Explore: hands on sliders, light on pictures. Geometry asks the server for the light of
// each channel; dials are weighted sums here.
import * as light from './light.js';
import * as pictures from './pictures.js';
import { solid } from './solid.js';

const place = document.querySelector('[data-explore]');
if (place) {
  begin(place).catch(problem => {
    place.querySelector('[data-reading]').textContent = problem.message;
  });
}

async function begin(root) {
  const at = root.dataset.explore;
  const find = selector => root.querySelector(selector);
  const canvas = name => find(`[data-view="${name}"]`);
  const scene = await ask(`${at}/data/scene.json`);
  const cellsOf = lattice => lattice.columns * lattice.rows * lattice.layers;
  const fitted = root.dataset.fitted === 'true';

  const state = {
    rigs: {}, volumes: {}, fields: {}, lattice: scene.coarse, depth: scene.tank.depth / 2,
    band: scene.bands[0], scale: null, cross: {}, interval: null, turn: { a: 0, b: 0 },
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
  pair(find('#depth'), find('#depth-number'), 0, scene.tank.depth, 0.005, value => {
    state.depth = value;
    moved();
  }).set(state.depth);
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
    state.rigs[key] = structuredClone(scene.rigs.find(rig => rig.name === name));
    controls(key);
    geometry(key);
  }

  /** Sliders of a rig: height, spacing, number, dials; each with its number. */
  function controls(key) {
    const box = find(`[data-rig="${key}"]`);
    box.replaceChildren();
    const rig = state.rigs[key];
    const heights = rig.hangings.map(h => h.height);
    const xs = rig.hangings.map(h => h.x);
    const centre = (Math.min(...xs) + Math.max(...xs)) / 2;
    const same = rig.hangings.every(h => h.fixture === rig.hangings[0].fixture);
    slider(box, key, `Height, ${scene.unit}`, 0.03, Math.max(0.8, 1.5 * Math.max(...heights)), 0.005, heights[0], value => {
      const by = value - rig.hangings[0].height;
      rig.hangings.forEach(h => { h.height = Math.max(0.01, h.height + by); });
      geometry(key);
    });
    if (same) {
      slider(box, key, 'Number of fixtures', 1, 6, 1, rig.hangings.length, value => {
        spread(rig, Math.round(value), centre, apart());
        geometry(key);
      }, 1);
      slider(box, key, `Spacing, ${scene.unit}`, 0.1, scene.tank.length, 0.01,
        rig.hangings.length > 1 ? (Math.max(...xs) - Math.min(...xs)) / (rig.hangings.length - 1) : scene.tank.length / 2, value => {
          spread(rig, rig.hangings.length, centre, value);
          geometry(key);
        });
    }
    slider(box, key, `Front to back, ${scene.unit}`, 0, scene.tank.width, 0.005, rig.hangings[0].y, value => {
      rig.hangings.forEach(h => { h.y = value; });
      geometry(key);
    });
    for (const kind of light.kinds(rig)) {
      const fixture = scene.fixtures[kind];
      const dials = rig.dials[kind];
      for (const name of [...fixture.channels, ...fixture.masters].map(dial => dial.name)) {
        slider(box, key, `${kind}: ${name}, %`, 0, 100, 1, dials[name] ?? 100, value => {
          dials[name] = value;
          weigh(key);
        }, 1);
      }
    }
    function apart() {
      const all = rig.hangings.map(h => h.x);
      return all.length > 1 ? (Math.max(...all) - Math.min(...all)) / (all.length - 1) : scene.tank.length / 2;
    }
  }

  function spread(rig, count, centre, spacing) {
    const pattern = rig.hangings[0];
    rig.hangings = Array.from({ length: count }, (_, i) => ({ ...pattern, x: centre + (i - (count - 1) / 2) * spacing }));
  }

  function slider(box, key, name, low, high, step, value, changed, per = scene.perMetre) {
    const field = document.createElement('div');
    field.className = 'field';
    const id = `${key}-${box.children.length}`;
    const label = document.createElement('label');
    label.htmlFor = id;
    label.textContent = name;
    const row = document.createElement('div');
    row.className = 'pair';
    const range = document.createElement('input');
    range.type = 'range';
    range.setAttribute('aria-label', name);
    const number = document.createElement('input');
    number.id = id;
    number.inputMode = 'decimal';
    number.autocomplete = 'off';
    row.append(range, number);
    field.append(label, row);
    box.append(field);
    pair(range, number, low, high, step, changed, per).set(value);
  }

  /** A slider and its number: whichever moves, the other follows. */
  function pair(range, number, low, high, step, changed, per = scene.perMetre) {
    range.min = low * per;
    range.max = high * per;
    range.step = per === 1 ? step : Math.max(step * per, scene.unit === 'in' ? 0.25 : 0.5);
    const show = shown => String(+shown.toFixed(2));
    range.addEventListener('input', () => {
      performance.mark('hand');
      number.value = show(+range.value);
      number.removeAttribute('aria-invalid');
      changed(+range.value / per);
    });
    number.addEventListener('input', () => {
      const typed = parseFloat(number.value.replace(',', '.'));
      const good = typed >= low * per - 1e-9 && typed <= high * per + 1e-9;
      number.toggleAttribute('aria-invalid', !good);
      if (good) {
        performance.mark('hand');
        range.value = typed;
        changed(typed / per);
      } else {
        number.setAttribute('aria-invalid', 'true');
        number.title = `a number from ${show(low * per)} to ${show(high * per)}`;
      }
    });
    return {
      set(value) {
        range.value = value * per;
        number.value = show(value * per);
      },
    };
  }

  /** The rig hangs otherwise: its light is asked for, coarse while the hand moves, then fine. */
  async function geometry(key) {
    const turn = ++state.turn[key];
    clearTimeout(state.later?.[key]);
    if (state.busy?.[key]) {
      (state.again ??= {})[key] = true;
      return;
    }
    (state.busy ??= {})[key] = true;
    try {
      await fetchField(key, false);
    } finally {
      state.busy[key] = false;
    }
    weigh(key);
    if (state.again?.[key]) {
      state.again[key] = false;
      geometry(key);
      return;
    }
    (state.later ??= {})[key] = setTimeout(async () => {
      if (turn === state.turn[key]) {
        await fetchField(key, true);
        weigh(key);
      }
    }, 250);
  }

  async function fetchField(key, fine) {
    const answer = await fetch(`${at}/data/field`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ ...state.rigs[key], fine }),
    });
    if (!answer.ok) {
      throw new Error((await answer.json()).title);
    }
    state.fields[key] = { data: new Float32Array(await answer.arrayBuffer()), lattice: fine ? scene.fine : scene.coarse };
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
    if (performance.getEntriesByName('hand').length) {
      const picture = performance.measure('hand to picture', 'hand');
      (globalThis.parfieldTimes ??= []).push(picture.duration);
      performance.clearMarks('hand');
      performance.clearMeasures('hand to picture');
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
    table(planes.a);
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
    const place = find('[data-table]');
    if (!place.closest('details').open) {
      return;
    }
    const columns = 10;
    const rows = 7;
    place.caption.textContent = `PPFD in µmol m⁻² s⁻¹, ${shown(state.depth)} ${scene.unit} deep; x to the right, y down, in ${scene.unit}`;
    const head = document.createElement('tr');
    head.append(th('y \\ x'));
    const x = i => (i + 0.5) / columns;
    const y = j => (j + 0.5) / rows;
    for (let i = 0; i < columns; i++) {
      head.append(th(shown(x(i) * scene.tank.length)));
    }
    place.tHead.replaceChildren(head);
    place.tBodies[0].replaceChildren(...Array.from({ length: rows }, (_, j) => {
      const row = document.createElement('tr');
      row.append(th(shown(y(j) * scene.tank.width), 'row'));
      for (let i = 0; i < columns; i++) {
        row.append(td(one(light.valueAt(of, x(i), y(j))), true));
      }
      return row;
    }));
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
    const answer = await fetch(`${at}/data/figures`, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: asked });
    if (!answer.ok || asked !== JSON.stringify({ ...state.rigs.a, depth: state.depth })) {
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
    view.addEventListener('pointermove', event => {
      const box = view.getBoundingClientRect();
      const u = (event.clientX - box.left - view.plane.x) / view.plane.w;
      const v = (event.clientY - box.top - view.plane.y) / view.plane.h;
      if (u >= 0 && u <= 1 && v >= 0 && v <= 1) {
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
    const of = level ? planeOf('a') : light.section(state.volumes.a.values, state.volumes.a.lattice);
    const value = light.valueAt(of, cross.u, cross.v);
    const where = level
      ? `x ${shown(cross.u * length)}, y ${shown(cross.v * width)}, depth ${shown(state.depth)} ${scene.unit}`
      : `x ${shown(cross.u * length)}, y ${shown(width / 2)}, depth ${shown(cross.v * depth)} ${scene.unit}`;
    const sure = level && state.interval
      ? ` (${one(light.valueAt(state.interval.low, cross.u, cross.v))}–${one(light.valueAt(state.interval.high, cross.u, cross.v))})` : '';
    const second = level && comparing() ? `; second rig ${one(light.valueAt(planeOf('b'), cross.u, cross.v))}` : '';
    find('[data-reading]').textContent = `${where}: ${Number.isNaN(value) ? 'rock' : `${one(value)}${sure} µmol m⁻² s⁻¹`}${second}`;
  }

  find('#take').addEventListener('click', async () => {
    const answer = await post(`${at}/take`, { ...state.rigs.a, name: find('#rig-name').value });
    find('[data-told]').textContent = answer.rig ? `The setup has the rig ${answer.rig} now.` : `${answer.title}; ${answer.hints?.map(h => h.message).join('; ')}`;
  });
  find('#reference').addEventListener('click', async () => {
    const answer = await post(`${at}/reference`, { ...state.rigs.a, depth: state.depth });
    if (!answer.job) {
      find('[data-told]').textContent = answer.title;
      return;
    }
    const job = at.replace(/\/explore$/, `/jobs/${answer.job}`);
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

async function ask(address) {
  const answer = await fetch(address);
  const json = await answer.json();
  if (!answer.ok) {
    throw new Error(json.title);
  }
  return json;
}

async function post(address, body) {
  const answer = await fetch(address, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) });
  return answer.json();
}
