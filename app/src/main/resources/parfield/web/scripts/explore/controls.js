// The hand of a rig: sliders with their numbers for the whole rig, for one of its fixtures and for the dials.
import { kinds } from './light.js';
import { readNumber, shown } from './number.js';
import { centre, even, moves, nameOf, spacing, spread, straighten, upright } from './rig.js';

const degrees = 180 / Math.PI;

/** A slider and its number: whichever moves, the other follows; what is no number within the limits is said beside it. */
export function pair(range, number, { low, high, step, unit, per, whole, changed }) {
  const limits = { low: low * per, high: high * per, unit, whole };
  const field = number.closest('.field');
  const fault = document.createElement('p');
  fault.className = 'fault';
  fault.id = `${number.id}-fault`;
  fault.hidden = true;
  field.append(fault);
  range.min = limits.low;
  range.max = limits.high;
  range.step = step;
  const say = problem => {
    fault.textContent = problem ?? '';
    fault.hidden = !problem;
    if (problem) {
      number.setAttribute('aria-invalid', 'true');
      number.setAttribute('aria-describedby', fault.id);
    } else {
      number.removeAttribute('aria-invalid');
      number.removeAttribute('aria-describedby');
    }
  };
  range.addEventListener('input', event => {
    number.value = shown(+range.value);
    say(null);
    changed(+range.value / per, event.timeStamp);
  });
  number.addEventListener('input', event => {
    const { value, problem } = readNumber(number.value, limits);
    say(problem);
    if (!problem) {
      range.value = value;
      changed(value / per, event.timeStamp);
    }
  });
  return (value, anew) => {
    range.value = value * per;
    if (anew || (document.activeElement !== number && !number.hasAttribute('aria-invalid'))) {
      number.value = shown(value * per);
      say(null);
    }
  };
}

/**
 * Builds the controls of a rig into a box.
 *
 * {key, rig, begun, scene, moved(when), weighed(when), chosen(i)}: hung otherwise, dialled otherwise, another fixture taken in hand.
 */
export function controls(box, { key, rig, begun, scene, moved, weighed, chose }) {
  const way = moves(rig);
  const shows = [];
  let chosen = 0;
  let built = 0;
  box.replaceChildren();

  function slider(into, name, spec, read) {
    const field = document.createElement('div');
    field.className = 'field';
    const label = document.createElement('label');
    label.htmlFor = `${key}-${built++}`;
    label.textContent = name;
    const row = document.createElement('div');
    row.className = 'pair';
    const range = document.createElement('input');
    range.type = 'range';
    range.setAttribute('aria-label', name);
    const number = document.createElement('input');
    number.id = label.htmlFor;
    number.inputMode = 'decimal';
    number.autocomplete = 'off';
    row.append(range, number);
    field.append(label, row);
    into.append(field);
    const show = pair(range, number, spec);
    shows.push(anew => show(read(), anew));
  }

  const fine = scene.unit === 'in' ? 0.25 : 0.5;
  const length = (what, low, high, changed) => ({
    low, high, step: fine, unit: scene.unit, per: scene.perMetre,
    changed(value, when) {
      way.before(what);
      changed(value);
      moved(when);
      sync();
    },
  });
  const angle = (what, most, changed) => ({
    ...length(what, -most, most, changed), step: 1, unit: '°', per: degrees,
  });

  const whole = value => Math.min(...rig.hangings.map(h => h[value]));
  const highest = Math.max(0.8, 1.5 * Math.max(...rig.hangings.map(h => h.height)));
  const along = scene.tank.length;
  const across = scene.tank.width;
  slider(box, `Height, ${scene.unit}`, length('height', 0.03, highest, value => {
    const by = value - whole('height');
    rig.hangings.forEach(h => { h.height = Math.max(0.01, h.height + by); });
  }), () => whole('height'));
  if (rig.hangings.every(h => h.fixture === rig.hangings[0].fixture)) {
    slider(box, 'Number of fixtures', {
      ...length('number', 1, 6, value => {
        spread(rig, Math.round(value), centre(rig), spacing(rig, along / 2));
      }), step: 1, unit: '', per: 1, whole: true,
    }, () => rig.hangings.length);
    slider(box, `Spacing, ${scene.unit}`, length('spacing', 0.1, along, value => {
      spread(rig, rig.hangings.length, centre(rig), value);
    }), () => spacing(rig, along / 2));
  }
  slider(box, `Front to back, ${scene.unit}`, length('y', 0, across, value => {
    const by = value - whole('y');
    rig.hangings.forEach(h => { h.y += by; });
  }), () => whole('y'));

  const single = document.createElement('details');
  single.className = 'single';
  const summary = document.createElement('summary');
  const choice = document.createElement('select');
  choice.id = `${key}-fixture`;
  const choosing = document.createElement('div');
  choosing.className = 'field';
  const label = document.createElement('label');
  label.htmlFor = choice.id;
  label.textContent = 'Fixture';
  choosing.append(label, choice);
  summary.textContent = 'One fixture by itself';
  single.append(summary, choosing);
  box.append(single);
  choice.addEventListener('change', () => choose(+choice.value));
  const own = () => rig.hangings[chosen];
  const beyond = 0.3;
  slider(single, `x of its centre, ${scene.unit}`, length('own x', -beyond, along + beyond, value => { own().x = value; }), () => own().x);
  slider(single, `y of its centre, ${scene.unit}`, length('own y', -beyond, across + beyond, value => { own().y = value; }), () => own().y);
  slider(single, `Its height, ${scene.unit}`, length('own height', 0.01, highest, value => { own().height = value; }), () => own().height);
  slider(single, 'Turn about the vertical, °', angle('own turn', Math.PI, value => { own().yaw = value; }), () => upright(own().yaw));
  slider(single, 'Tilt about its length, °', angle('own tilt', Math.PI / 2, value => { own().tilt = value; }), () => own().tilt);

  const buttons = document.createElement('div');
  buttons.className = 'actions';
  const button = (words, act) => {
    const made = document.createElement('button');
    made.type = 'button';
    made.textContent = words;
    made.addEventListener('click', event => act(event.timeStamp));
    buttons.append(made);
    return made;
  };
  const back = button('Undo the last move', undo);
  const row = button('Back to an even row', when => {
    way.before('row');
    straighten(rig, begun);
    moved(when);
    sync();
  });
  box.append(buttons);

  for (const kind of kinds(rig)) {
    const fixture = scene.fixtures[kind];
    const dials = rig.dials[kind];
    for (const { name } of [...fixture.channels, ...fixture.masters]) {
      slider(box, `${kind}: ${name}, %`, {
        low: 0, high: 100, step: 1, unit: '%', per: 1,
        changed(value, when) {
          dials[name] = value;
          weighed(when);
        },
      }, () => dials[name] ?? 100);
    }
  }

  function undo(when) {
    way.undo();
    moved(when);
    sync(true);
  }

  function choose(i) {
    chosen = Math.min(i, rig.hangings.length - 1);
    sync(true);
    chose();
  }

  /** Shows what is; anew, too where something is typed that could not be read. */
  function sync(anew = false) {
    chosen = Math.min(chosen, rig.hangings.length - 1);
    if (choice.options.length !== rig.hangings.length) {
      choice.replaceChildren(...rig.hangings.map((h, i) => new Option(nameOf(rig, i), i)));
    }
    choice.value = String(chosen);
    shows.forEach(show => show(anew));
    back.disabled = !way.some;
    row.disabled = even(rig);
  }

  sync();
  return {
    sync,
    undo,
    choose,
    open: () => { single.open = true; },
    before: what => way.before(what),
    get chosen() {
      return chosen;
    },
  };
}
