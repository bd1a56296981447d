// Tank and rig from above and from the front, to scale, drawn from the fields of the form: what is
// dragged or moved by keys is written into the fields, what is typed there is drawn.
const NS = 'http://www.w3.org/2000/svg';
const IN_CM = { mm: 0.1, cm: 1, m: 100, in: 2.54, inch: 2.54, inches: 2.54, '"': 2.54, ft: 30.48 };

const escaped = name => name.replaceAll('~', '~0').replaceAll('/', '~1');

function make(tag, attributes, ...children) {
  const node = document.createElementNS(NS, tag);
  for (const [name, value] of Object.entries(attributes)) {
    node.setAttribute(name, value);
  }
  node.append(...children);
  return node;
}

/** Draws the form's setup and keeps drawing it. */
export function drawing(form) {
  const page = document.querySelector('.set-up');
  const unit = page.dataset.unit;
  const cm = IN_CM[unit];
  const step = unit === 'in' ? 0.5 : 1;
  const snap = unit === 'in' ? 0.25 : 0.5;
  const chooser = document.querySelector('#drawn-rig');
  const told = document.querySelector('[data-told]');
  const plan = document.querySelector('[data-plan]');
  const side = document.querySelector('[data-side]');
  const field = pointer => form.querySelector(`[name="${CSS.escape(pointer)}"]`);
  const group = pointer => form.querySelector(`[data-path="${CSS.escape(pointer)}"]`);

  /** A number of the form in its own unit; NaN where there is none. */
  function number(pointer) {
    const match = /^\s*([+\u2212-]?(?:\d+(?:[.,]\d*)?|[.,]\d+))\s*(\D*)$/.exec(field(pointer)?.value ?? '');
    return match ? Number(match[1].replace(',', '.').replace('\u2212', '-')) * behind(match[2].trim()) : NaN;
  }

  function behind(suffix) {
    return suffix in IN_CM ? IN_CM[suffix] / cm : 1;
  }

  const or = (value, otherwise) => (Number.isFinite(value) ? value : otherwise);
  const shown = value => String(Math.round(value * 1000) / 1000);

  function write(pointer, value) {
    const input = field(pointer);
    input.value = shown(value);
    input.dispatchEvent(new Event('input', { bubbles: true }));
  }

  function rows(pointer) {
    return [...(group(pointer)?.querySelectorAll(':scope > fieldset') ?? [])]
      .map(row => row.dataset.path);
  }

  function fixture(name) {
    const at = `/fixtures/${escaped(name)}`;
    const emitters = rows(`${at}/emitters`).map(row => ({
      x: or(number(`${row}/x`), 0), y: or(number(`${row}/y`), 0), size: or(number(`${row}/aperture`), 0),
    }));
    const reach = key => Math.max(2 / cm, ...emitters.map(e => Math.abs(e[key]) + e.size / 2 + 2 / cm)) * 2;
    return {
      emitters,
      length: or(number(`${at}/length`), reach('x')),
      width: or(number(`${at}/width`), reach('y')),
    };
  }

  /** Rocks of the form; those without numbers are left out. A mesh is drawn as the box about it, as it is stored. */
  function rocks() {
    return [...(group('/tank/aquascape')?.querySelectorAll(':scope > details') ?? [])].map(entry => {
      const row = entry.dataset.path;
      const shape = field(`shape:${row}`).value;
      const mesh = document.querySelector(`[data-mesh="${CSS.escape(row)}"]`);
      const sizes = ['box', 'ellipsoid'].map(kind => `${row}/${kind}`).find(at => field(`${at}/length`));
      const size = key => (shape === 'mesh' ? Number(mesh?.dataset[key]) : number(`${sizes}/${key}`));
      return {
        row, shape, name: field(`name:${row}`).value, length: size('length'), width: size('width'), tall: size('height'),
        x: number(`${row}/x`), y: number(`${row}/y`), above: or(number(`${row}/above bottom`), 0),
        yaw: shape === 'mesh' ? 0 : or(number(`${row}/yaw`), 0),
      };
    }).filter(rock => [rock.length, rock.width, rock.tall].every(size => size > 0) && [rock.x, rock.y].every(Number.isFinite));
  }

  /** Everything that is drawn, as numbers in the page's unit; null while the tank is none. */
  function scene() {
    const tank = {
      length: number('/tank/length'), width: number('/tank/width'), water: number('/tank/water'),
      rim: or(number('/tank/rim'), 0), above: or(number('/tank/freeboard'), 0),
    };
    if (!(tank.length > 0 && tank.width > 0 && tank.water > 0 && tank.length * cm <= 2000)) {
      return null;
    }
    const opaque = rows('/tank/braces').map(row => {
      const [from, to] = [number(`${row}/from`), number(`${row}/to`)];
      return field(`${row}/along`).value === 'width'
        ? { x: 0, y: from, length: tank.length, width: to - from }
        : { x: from, y: 0, length: to - from, width: tank.width };
    }).concat(rows('/tank/opaque').map(row => ({
      x: number(`${row}/x/0`), y: number(`${row}/y/0`),
      length: number(`${row}/x/1`) - number(`${row}/x/0`),
      width: number(`${row}/y/1`) - number(`${row}/y/0`),
    }))).filter(part => part.length > 0 && part.width > 0);
    const rig = chooser.value;
    const hung = rows(`/rigs/${escaped(rig)}/hang`).map((row, i) => {
      const name = field(`${row}/fixture`).value;
      return {
        row, name, ordinal: i + 1, ...fixture(name),
        x: number(`${row}/x`), y: number(`${row}/y`), height: number(`${row}/height`),
        yaw: or(number(`${row}/yaw`), 0),
      };
    }).filter(h => [h.x, h.y, h.height].every(Number.isFinite));
    return { tank, opaque, rig, hung, rocks: rocks() };
  }

  /** An SVG over a range of centimetres, y upward. */
  function sheet(range, words) {
    const width = range.right - range.left;
    const height = range.top - range.bottom;
    const svg = make('svg', {
      class: 'draw', viewBox: `${range.left} ${-range.top} ${width} ${height}`, role: 'group',
      'aria-label': words,
    });
    svg.dataset.width = width;
    return svg;
  }

  /** Height of letters: a share of the drawing, and 12 pixels of the screen at least. */
  const type = svg =>
    Number(svg.dataset.width) * Math.max(1 / 32, 12 / (plan.clientWidth || 560));

  function text(svg, x, y, words, anchor) {
    svg.append(make('text', { x, y: -y, 'font-size': type(svg), 'text-anchor': anchor ?? 'middle' }, words));
  }

  /** One centimetre of a drawing in pixels of the screen. */
  function pixels(svg) {
    return (svg.getBoundingClientRect().width || 560) / Number(svg.dataset.width);
  }

  function movable(svg, hung, place, keys, body, span) {
    const where = hung.shape
      ? `${hung.name}, ${hung.shape}: x ${shown(hung.x)}, y ${shown(hung.y)}, foot ${shown(hung.above)} ${unit} above the bottom`
      : `${hung.name} ${hung.ordinal}: x ${shown(hung.x)}, y ${shown(hung.y)}, height ${shown(hung.height)} ${unit}`;
    const node = make('g', {
      class: hung.shape ? 'hung rock' : 'hung', tabindex: 0, role: 'group',
      'aria-roledescription': hung.shape ? 'rock that can be moved' : 'fixture that can be moved', 'aria-label': `${where}. Arrow keys move it.`,
    });
    node.dataset.row = hung.row;
    const move = at => node.setAttribute('transform', `translate(${at.x * cm} ${-(at.y + (span.lift ?? 0)) * cm})`);
    move(place);
    node.append(...body);
    svg.append(node);
    const reach = 22 / pixels(svg);
    node.prepend(make('rect', {
      class: 'grip', x: -Math.max(reach, span.x / 2), y: -Math.max(reach, span.y / 2) - (span.lift === undefined ? 0 : span.y / 2),
      width: 2 * Math.max(reach, span.x / 2), height: 2 * Math.max(reach, span.y / 2),
    }));
    const refocus = () =>
      holder(svg).querySelector(`.hung[data-row="${CSS.escape(hung.row)}"]`)?.focus();
    const put = at => {
      write(`${hung.row}/${keys.x}`, at.x);
      write(`${hung.row}/${keys.y}`, at.y);
    };
    const clamp = at => ({ x: at.x, y: keys.y === 'height' ? Math.max(snap, at.y) : at.y });
    node.addEventListener('keydown', event => {
      const [dx, dy] = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key] ?? [0, 0];
      if (dx === 0 && dy === 0) {
        return;
      }
      event.preventDefault();
      const by = event.shiftKey ? 10 * step : step;
      put(clamp({ x: place.x + dx * by, y: place.y + dy * by }));
      draw();
      refocus();
      tell(hung.row, keys);
    });
    node.addEventListener('pointerdown', event => {
      if (event.button !== 0) {
        return;
      }
      event.preventDefault();
      node.focus();
      node.setPointerCapture(event.pointerId);
      node.classList.add('held');
      held = true;
      const from = { x: event.clientX, y: event.clientY };
      const scale = pixels(svg) * cm;
      const round = value => Math.round(value / snap) * snap;
      const drag = moved => {
        const at = clamp({
          x: place.x + round((moved.clientX - from.x) / scale),
          y: place.y - round((moved.clientY - from.y) / scale),
        });
        move(at);
        put(at);
      };
      const drop = () => {
        held = false;
        node.removeEventListener('pointermove', drag);
        draw();
        refocus();
        tell(hung.row, keys);
      };
      node.addEventListener('pointermove', drag);
      node.addEventListener('pointerup', drop, { once: true });
      node.addEventListener('pointercancel', drop, { once: true });
    });
  }

  let held = false;
  const holder = svg => (svg.dataset.view === 'plan' ? plan : side);

  function tell(row, keys) {
    told.textContent = `${keys.x} ${field(`${row}/${keys.x}`).value}, ${keys.y} ${field(`${row}/${keys.y}`).value} ${unit}`;
  }

  function lamp(h, above) {
    const body = make('g', above ? { transform: `rotate(${-h.yaw})` } : {});
    if (above) {
      body.append(make('rect', { class: 'body', x: -h.length / 2 * cm, y: -h.width / 2 * cm, width: h.length * cm, height: h.width * cm, rx: 1 }));
      for (const e of h.emitters) {
        const size = Math.max(e.size * cm, 1.2);
        body.append(make('rect', { class: 'emitter', x: e.x * cm - size / 2, y: -e.y * cm - size / 2, width: size, height: size }));
      }
      return { body, span: { x: h.length * cm, y: h.width * cm } };
    }
    const turn = h.yaw * Math.PI / 180;
    const span = Math.abs(h.length * Math.cos(turn)) + Math.abs(h.width * Math.sin(turn));
    const thick = 3;
    body.append(make('rect', { class: 'body', x: -span / 2 * cm, y: -thick, width: span * cm, height: thick, rx: 0.6 }));
    for (const e of h.emitters) {
      const size = Math.max(e.size * cm, 1.2);
      body.append(make('rect', { class: 'emitter', x: (e.x * Math.cos(turn) - e.y * Math.sin(turn)) * cm - size / 2, y: -0.8, width: size, height: 0.8 }));
    }
    return { body, span: { x: span * cm, y: 2 * thick } };
  }

  function stone(rock, above) {
    const turn = (rock.yaw * Math.PI) / 180;
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    const box = rock.shape !== 'ellipsoid';
    const wide = box ? Math.abs(rock.length * c) + Math.abs(rock.width * s) : Math.hypot(rock.length * c, rock.width * s);
    const [length, high] = above ? [rock.length * cm, rock.width * cm] : [wide * cm, rock.tall * cm];
    const middle = above ? 0 : -high / 2;
    const cls = rock.shape === 'mesh' ? 'body mesh' : 'body';
    const body = make('g', above ? { transform: `rotate(${-rock.yaw})` } : {}, box
      ? make('rect', { class: cls, x: -length / 2, y: middle - high / 2, width: length, height: high })
      : make('ellipse', { class: cls, cx: 0, cy: middle, rx: length / 2, ry: high / 2 }));
    return { body, span: { x: length, y: high } };
  }

  function rocksIn(svg, drawn, above, water) {
    for (const rock of drawn) {
      const { body, span } = stone(rock, above);
      const name = make('text', { y: (above ? 0 : -span.y / 2) + type(svg) * 0.35, 'font-size': type(svg), 'text-anchor': 'middle' }, rock.name);
      if (above) {
        movable(svg, rock, { x: rock.x, y: rock.y }, { x: 'x', y: 'y' }, [body, name], span);
      } else {
        movable(svg, rock, { x: rock.x, y: rock.above }, { x: 'x', y: 'above bottom' }, [body, name], { ...span, lift: -water });
      }
    }
  }

  const reachOf = h => Math.max(h.length, h.width) / 2;

  function drawPlan({ tank, opaque, rig, hung, rocks: lying }) {
    const words = `${shown(tank.length)} by ${shown(tank.width)} ${unit} from above${hung.length ? `, under rig ${rig}: ` : '.'}${hung.map(h => `${h.name} at x ${shown(h.x)}, y ${shown(h.y)}`).join('; ')}${hung.length ? '.' : ''}${lying.length ? ` Rocks: ${lying.map(r => `${r.name} at x ${shown(r.x)}, y ${shown(r.y)}`).join('; ')}.` : ''}`;
    const pad = Math.max(tank.length, tank.width) * 0.09;
    const svg = sheet({
      left: Math.min(-pad, ...hung.map(h => h.x - reachOf(h) - pad / 3)) * cm,
      right: Math.max(tank.length + pad, ...hung.map(h => h.x + reachOf(h) + pad / 3)) * cm,
      bottom: Math.min(-pad, ...hung.map(h => h.y - reachOf(h) - pad / 3)) * cm,
      top: Math.max(tank.width + pad, ...hung.map(h => h.y + reachOf(h) + pad / 3)) * cm,
    }, words);
    svg.dataset.view = 'plan';
    const box = (cls, x, y, length, width) => make('rect', { class: cls, x: x * cm, y: -(y + width) * cm, width: length * cm, height: width * cm });
    svg.append(box('water', 0, 0, tank.length, tank.width));
    if (tank.rim > 0 && tank.rim < Math.min(tank.length, tank.width) / 2) {
      const [l, w, r] = [tank.length * cm, tank.width * cm, tank.rim * cm];
      svg.append(make('path', { class: 'opaque', 'fill-rule': 'evenodd', d: `M0 0H${l}V${-w}H0ZM${r} ${-r}V${r - w}H${l - r}V${-r}Z` }));
    }
    opaque.forEach(part => svg.append(box('opaque', part.x, part.y, part.length, part.width)));
    svg.append(box('pane', 0, 0, tank.length, tank.width));
    text(svg, tank.length * cm / 2, -type(svg) * 1.25, `front, ${shown(tank.length)} ${unit}`);
    text(svg, tank.length * cm / 2, tank.width * cm + type(svg) * 0.4, 'back');
    plan.replaceChildren(svg);
    rocksIn(svg, lying, true, tank.water);
    for (const h of hung) {
      const { body, span } = lamp(h, true);
      const count = make('text', { class: 'count', y: type(svg) * 0.35, 'font-size': type(svg) }, String(h.ordinal));
      movable(svg, h, { x: h.x, y: h.y }, { x: 'x', y: 'y' }, [body, count], span);
    }
    document.querySelector('[data-plan-words]').textContent = words;
  }

  function drawSide({ tank, hung, rocks: lying }) {
    const words = `${shown(tank.water)} ${unit} of water from the front${hung.length ? '; ' : '.'}${hung.map(h => `${h.name} ${shown(h.height)} ${unit} above it`).join('; ')}${hung.length ? '.' : ''}${lying.length ? ` Rocks: ${lying.map(r => `${r.name} from ${shown(r.above)} to ${shown(r.above + r.tall)} ${unit} above the bottom`).join('; ')}.` : ''}`;
    const pad = tank.length * 0.09;
    const svg = sheet({
      left: Math.min(-pad, ...hung.map(h => h.x - reachOf(h) - pad / 3)) * cm,
      right: Math.max(tank.length + pad, ...hung.map(h => h.x + reachOf(h) + pad / 3)) * cm,
      bottom: (-tank.water - pad / 2) * cm,
      top: Math.max(tank.above + pad, ...hung.map(h => h.height + pad)) * cm,
    }, words);
    svg.dataset.view = 'side';
    const [l, d, a] = [tank.length * cm, tank.water * cm, tank.above * cm];
    svg.append(make('rect', { class: 'water', x: 0, y: 0, width: l, height: d }));
    svg.append(make('path', { class: 'pane', d: `M0 ${-a}V${d}H${l}V${-a}` }));
    svg.append(make('path', { class: 'surface', d: `M0 0H${l}` }));
    if (tank.rim > 0) {
      svg.append(make('path', { class: 'rule', d: `M0 ${-a}h${tank.rim * cm}M${l} ${-a}h${-tank.rim * cm}` }));
    }
    text(svg, l / 2, -d / 2, `water ${shown(tank.water)} ${unit}`);
    side.replaceChildren(svg);
    rocksIn(svg, lying, false, tank.water);
    for (const h of hung) {
      const { body, span } = lamp(h, false);
      svg.append(make('path', { class: 'rule', d: `M${h.x * cm} ${-h.height * cm}V0` }));
      text(svg, h.x * cm + type(svg) * 0.4, h.height * cm / 2, shown(h.height), 'start');
      movable(svg, h, { x: h.x, y: h.height }, { x: 'x', y: 'height' }, [body], span);
    }
    document.querySelector('[data-side-words]').textContent = words;
  }

  function draw() {
    if (held) {
      return;
    }
    const drawn = scene();
    if (drawn === null) {
      document.querySelector('[data-plan-words]').textContent = 'Length, width and water are needed to draw the tank.';
      return;
    }
    drawPlan(drawn);
    drawSide(drawn);
  }

  chooser.value = page.dataset.rig;
  document.querySelector('[data-choose]').hidden = chooser.options.length < 2;
  document.querySelector('[data-hint]').hidden = false;
  chooser.addEventListener('change', draw);
  for (const button of form.querySelectorAll('[data-draw]')) {
    button.hidden = chooser.options.length < 2;
    button.addEventListener('click', () => {
      chooser.value = button.dataset.draw;
      draw();
      plan.scrollIntoView({ block: 'nearest' });
    });
  }
  let waiting = 0;
  form.addEventListener('input', () => {
    cancelAnimationFrame(waiting);
    waiting = requestAnimationFrame(() => {
      const focused = document.activeElement?.closest?.('.hung');
      const at = focused && [holder(focused.ownerSVGElement), focused.dataset.row];
      draw();
      at?.[0].querySelector(`.hung[data-row="${CSS.escape(at[1])}"]`)?.focus();
    });
  });
  addEventListener('resize', draw);
  draw();
}
