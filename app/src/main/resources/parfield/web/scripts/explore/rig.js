// A rig as numbers: fixtures in a row or each by itself. Lengths in metres, angles in radians. No page here.

/** What a fixture of a rig is called: its kind, with a number where there are several. */
export function nameOf(rig, i) {
  return rig.hangings.length > 1 ? `${rig.hangings[i].fixture} ${i + 1}` : rig.hangings[i].fixture;
}

/** An angle between −180 (left out) and 180 degrees. */
export function upright(angle) {
  const turn = angle % (2 * Math.PI);
  return turn > Math.PI ? turn - 2 * Math.PI : turn <= -Math.PI ? turn + 2 * Math.PI : turn;
}

const xs = rig => rig.hangings.map(h => h.x);
export const centre = rig => (Math.min(...xs(rig)) + Math.max(...xs(rig))) / 2;

/** Mean distance of neighbours in a row; of a single fixture, none: what is handed in. */
export function spacing(rig, otherwise) {
  const n = rig.hangings.length;
  return n > 1 ? (Math.max(...xs(rig)) - Math.min(...xs(rig))) / (n - 1) : otherwise;
}

/** Spreads a rig's fixtures evenly along the tank, in the order in which they hang; new ones hang as the last. */
export function spread(rig, count, about, apart) {
  const order = [...rig.hangings].sort((a, b) => a.x - b.x);
  while (order.length < count) {
    order.push({ ...order[order.length - 1] });
  }
  order.length = count;
  order.forEach((h, i) => { h.x = about + (i - (count - 1) / 2) * apart; });
  rig.hangings = rig.hangings.filter(h => order.includes(h)).concat(order.filter(h => !rig.hangings.includes(h)));
}

const near = (a, b) => Math.abs(a - b) < 1e-6;

/** Whether a rig hangs in an even row: one height, one line, one turn, even gaps. */
export function even(rig) {
  const [first] = rig.hangings;
  const sorted = xs(rig).sort((a, b) => a - b);
  const gap = spacing(rig, 0);
  return rig.hangings.every(h => ['y', 'height', 'yaw', 'tilt'].every(key => near(h[key], first[key])))
    && sorted.every((x, i) => near(x, sorted[0] + i * gap));
}

/** Gives single places up: an even row about the same centre, at mean height and line, turned as the rig began. */
export function straighten(rig, begun) {
  const mean = key => rig.hangings.reduce((sum, h) => sum + h[key], 0) / rig.hangings.length;
  const [y, height] = [mean('y'), mean('height')];
  const { yaw, tilt } = begun.hangings[0];
  rig.hangings.forEach(h => Object.assign(h, { y, height, yaw, tilt }));
  spread(rig, rig.hangings.length, centre(rig), spacing(rig, 0));
}

/** The way back: what hung how before each move. Moves of one thing that follow each other closely are one. */
export function moves(rig) {
  const past = [];
  let last = { what: '', when: 0 };
  return {
    before(what) {
      const now = performance.now();
      if (what !== last.what || now - last.when > 1500) {
        past.push(structuredClone(rig.hangings));
        if (past.length > 100) {
          past.shift();
        }
      }
      last = { what, when: now };
    },
    undo() {
      last = { what: '', when: 0 };
      if (past.length > 0) {
        rig.hangings = past.pop();
      }
    },
    get some() {
      return past.length > 0;
    },
  };
}
