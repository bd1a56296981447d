// What takes a rig's fixtures in hand over the plan: one grip a fixture, and one that turns the chosen one. By pointer and by arrow keys.
import { shown } from './number.js';
import { nameOf, upright } from './rig.js';

const degrees = 180 / Math.PI;
const small = 44;

/** Grips of a rig over a canvas; `hand` is {rig(), controls(), scene, moved(when), told(words)}. Returns what puts them in place. */
export function grips(layer, canvas, hand) {
  const { scene } = hand;
  const per = scene.perMetre;
  const step = (scene.unit === 'in' ? 0.5 : 1) / per;
  const snap = (scene.unit === 'in' ? 0.25 : 0.5) / per;
  const round = value => Math.round(value / snap) * snap;
  const within = (value, most) => Math.max(0, Math.min(most, value));
  const lengths = h => `x ${shown(h.x * per)}, y ${shown(h.y * per)}, height ${shown(h.height * per)} ${scene.unit}`;
  const turned = h => `${shown(Math.round(10 * upright(h.yaw) * degrees) / 10)}°`;
  let turner = null;
  let held = false;

  function made(cls) {
    const node = document.createElement('button');
    node.type = 'button';
    node.className = cls;
    node.addEventListener('keydown', event => {
      if (event.key.toLowerCase() === 'z' && (event.ctrlKey || event.metaKey)) {
        event.preventDefault();
        hand.controls().undo(event.timeStamp);
      }
    });
    layer.append(node);
    return node;
  }

  /** Follows a pointer from its press to its release. */
  function dragged(node, pressed, follow) {
    node.addEventListener('pointerdown', event => {
      if (event.button !== 0) {
        return;
      }
      event.preventDefault();
      node.focus();
      node.setPointerCapture(event.pointerId);
      node.classList.add('held');
      held = true;
      const from = pressed(event);
      const drag = moved => follow(moved, from);
      const drop = () => {
        held = false;
        node.classList.remove('held');
        node.removeEventListener('pointermove', drag);
        place();
      };
      node.addEventListener('pointermove', drag);
      node.addEventListener('pointerup', drop, { once: true });
      node.addEventListener('pointercancel', drop, { once: true });
    });
  }

  function change(what, i, to, when) {
    hand.controls().before(what);
    Object.assign(hand.rig().hangings[i], to);
    hand.controls().sync();
    place();
    hand.moved(when);
  }

  const bodies = [];
  function body(i) {
    const node = made('grip');
    node.setAttribute('aria-roledescription', 'fixture that can be moved');
    const number = document.createElement('span');
    number.textContent = i + 1;
    node.append(number);
    const own = () => hand.rig().hangings[i];
    node.addEventListener('focus', () => {
      if (hand.controls().chosen !== i) {
        hand.controls().choose(i);
      }
    });
    node.addEventListener('click', () => hand.controls().open());
    node.addEventListener('keydown', event => {
      const [dx, dy] = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key] ?? [0, 0];
      if (dx === 0 && dy === 0) {
        return;
      }
      event.preventDefault();
      const by = event.shiftKey ? 5 * step : step;
      change(`keys ${i}`, i, {
        x: within(own().x + dx * by, scene.tank.length), y: within(own().y + dy * by, scene.tank.width),
      }, event.timeStamp);
      hand.told(`${nameOf(hand.rig(), i)}: ${lengths(own())}`);
    });
    dragged(node,
      event => ({ x: event.clientX, y: event.clientY, at: { ...own() }, scale: canvas.plane.w / scene.tank.length, what: `drag ${event.timeStamp}` }),
      (event, from) => change(from.what, i, {
        x: within(round(from.at.x + (event.clientX - from.x) / from.scale), scene.tank.length),
        y: within(round(from.at.y - (event.clientY - from.y) / from.scale), scene.tank.width),
      }, event.timeStamp));
    return node;
  }

  function turn() {
    const node = made('turn');
    node.setAttribute('role', 'slider');
    node.setAttribute('aria-valuemin', '-180');
    node.setAttribute('aria-valuemax', '180');
    const own = () => hand.rig().hangings[hand.controls().chosen];
    const to = (what, angle, when) => change(what, hand.controls().chosen, { yaw: upright(angle) }, when);
    node.addEventListener('keydown', event => {
      const by = { ArrowLeft: 1, ArrowUp: 1, ArrowRight: -1, ArrowDown: -1 }[event.key];
      if (by) {
        event.preventDefault();
        to('turn by keys', own().yaw + (by * (event.shiftKey ? 5 : 1)) / degrees, event.timeStamp);
      }
    });
    dragged(node,
      event => ({ what: `turn ${event.timeStamp}`, away: node.dataset.away === 'true' }),
      (event, from) => {
        const box = canvas.getBoundingClientRect();
        const at = middle(own());
        const angle = Math.atan2(box.top + at.y - event.clientY, event.clientX - box.left - at.x) + (from.away ? Math.PI : 0);
        to(from.what, Math.round(angle * degrees) / degrees, event.timeStamp);
      });
    return node;
  }

  const scale = () => canvas.plane.w / scene.tank.length;
  const middle = h => ({
    x: canvas.plane.x + within(h.x, scene.tank.length) * scale(),
    y: canvas.plane.y + canvas.plane.h - within(h.y, scene.tank.width) * scale(),
  });

  /** Puts every grip where its fixture is drawn. */
  function place() {
    const rig = hand.rig();
    if (!canvas.plane || !rig) {
      return;
    }
    while (bodies.length > rig.hangings.length) {
      bodies.pop().remove();
    }
    while (bodies.length < rig.hangings.length) {
      bodies.push(body(bodies.length));
    }
    turner ??= turn();
    const { chosen } = hand.controls();
    rig.hangings.forEach((h, i) => {
      const fixture = scene.fixtures[h.fixture];
      const at = middle(h);
      const w = Math.max(small, fixture.length * scale());
      const d = Math.max(small, fixture.width * scale());
      const node = bodies[i];
      node.style.width = `${w}px`;
      node.style.height = `${d}px`;
      node.style.transform = `translate(${at.x - w / 2}px, ${at.y - d / 2}px) rotate(${-h.yaw}rad)`;
      node.firstChild.style.transform = `rotate(${h.yaw}rad)`;
      node.firstChild.hidden = rig.hangings.length < 2;
      node.setAttribute('aria-pressed', String(i === chosen));
      node.setAttribute('aria-label', `${nameOf(rig, i)}: ${lengths(h)}, turned ${turned(h)}. Arrow keys move it.`);
    });
    const own = rig.hangings[chosen];
    const at = middle(own);
    const reach = (Math.max(small, scene.fixtures[own.fixture].length * scale()) + small) / 2;
    // Where its end would leave the picture, the other end is taken; a drag keeps to the end it began with.
    const inside = angle => {
      const [x, y] = [at.x + reach * Math.cos(angle), at.y - reach * Math.sin(angle)];
      return x > small / 2 && x < canvas.plane.whole - small / 2 && y > 0 && y < canvas.plane.y + canvas.plane.h;
    };
    if (!held) {
      turner.dataset.away = String(!inside(own.yaw) && inside(own.yaw + Math.PI));
    }
    const angle = own.yaw + (turner.dataset.away === 'true' ? Math.PI : 0);
    turner.style.transform = `translate(${at.x + reach * Math.cos(angle) - small / 2}px, ${at.y - reach * Math.sin(angle) - small / 2}px)`;
    turner.setAttribute('aria-label', `Turn of ${nameOf(rig, chosen)}`);
    turner.setAttribute('aria-valuenow', String(Math.round(10 * upright(own.yaw) * degrees) / 10));
    turner.setAttribute('aria-valuetext', turned(own));
  }

  return { place };
}
