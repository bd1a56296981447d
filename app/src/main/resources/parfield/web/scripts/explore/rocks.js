// Rocks as shapes: what a plane cuts of them, what lies in them, how they are spoken of. Lengths in metres; no page here.
import { shown } from './number.js';

const steps = 72;
/** Triangles come in tenths of a millimetre; a plane between two of these meets no corner. */
const tenths = 10_000;

/** Corners of a rock's outline turned about the vertical and put in place. */
function turned(rock, points) {
  const x = (rock.x[0] + rock.x[1]) / 2;
  const y = (rock.y[0] + rock.y[1]) / 2;
  const [c, s] = [Math.cos(rock.yaw), Math.sin(rock.yaw)];
  return points.map(([a, b]) => [x + a * c - b * s, y + a * s + b * c]);
}

const circle = Array.from({ length: steps }, (_, i) => [Math.cos((2 * Math.PI * i) / steps), Math.sin((2 * Math.PI * i) / steps)]);
const middle = range => (range[0] + range[1]) / 2;

/** Half the width of what an upright plane (y fixed) cuts of an ellipse or a rectangle, and its middle along x; null for nothing. */
function chord(rock, y, grown) {
  const [a, b] = [(rock.size[0] / 2) * grown, (rock.size[1] / 2) * grown];
  const corners = rock.kind === 'box' ? [[-a, -b], [a, -b], [a, b], [-a, b]] : circle.map(([c, s]) => [a * c, b * s]);
  const outline = turned(rock, corners);
  const met = [];
  outline.forEach(([x0, y0], i) => {
    const [x1, y1] = outline[(i + 1) % outline.length];
    if ((y0 < y) !== (y1 < y)) {
      met.push(x0 + ((y - y0) / (y1 - y0)) * (x1 - x0));
    }
  });
  return met.length < 2 ? null : [Math.min(...met), Math.max(...met)];
}

/** What a level plane cuts of a rock: closed lines of [x, y]. */
export function levelCut(rock, depth) {
  if (depth <= rock.depth[0] || depth >= rock.depth[1]) {
    return [];
  }
  if (rock.kind === 'mesh') {
    return meshCut(rock.triangles, 2, depth, 0, 1);
  }
  const [a, b] = [rock.size[0] / 2, rock.size[1] / 2];
  if (rock.kind === 'box') {
    return [turned(rock, [[-a, -b], [a, -b], [a, b], [-a, b]])];
  }
  const z = (depth - middle(rock.depth)) / (rock.size[2] / 2);
  const share = Math.sqrt(Math.max(0, 1 - z * z));
  return [turned(rock, circle.map(([c, s]) => [a * share * c, b * share * s]))];
}

/** What an upright plane along the tank cuts of a rock: closed lines of [x, depth]. */
export function uprightCut(rock, y) {
  if (y <= rock.y[0] || y >= rock.y[1]) {
    return [];
  }
  if (rock.kind === 'mesh') {
    return meshCut(rock.triangles, 1, y, 0, 2);
  }
  if (rock.kind === 'box') {
    const ends = chord(rock, y, 1);
    return ends ? [[[ends[0], rock.depth[0]], [ends[1], rock.depth[0]], [ends[1], rock.depth[1]], [ends[0], rock.depth[1]]]] : [];
  }
  const left = [];
  const right = [];
  for (let i = 0; i <= steps; i++) {
    const angle = (Math.PI * i) / steps;
    const ends = chord(rock, y, Math.sin(angle));
    if (ends) {
      const depth = middle(rock.depth) - (rock.size[2] / 2) * Math.cos(angle);
      left.push([ends[0], depth]);
      right.unshift([ends[1], depth]);
    }
  }
  return left.length > 1 ? [left.concat(right)] : [];
}

/** Lines in which a plane across an axis cuts a closed surface. */
function meshCut(triangles, axis, at, u, v) {
  const level = Math.round(at * tenths) + 0.5;
  const next = new Map();
  for (let t = 0; t < triangles.length; t += 9) {
    const above = [0, 3, 6].map(c => triangles[t + c + axis] > level);
    if (above[0] === above[1] && above[1] === above[2]) {
      continue;
    }
    let enters = null;
    let leaves = null;
    for (let c = 0; c < 3; c++) {
      const d = (c + 1) % 3;
      if (above[c] !== above[d]) {
        const end = crossing(triangles, t + 3 * (above[c] ? d : c), t + 3 * (above[c] ? c : d), axis, level, u, v);
        above[c] ? (leaves = end) : (enters = end);
      }
    }
    const from = next.get(enters.key) ?? next.set(enters.key, []).get(enters.key);
    from.push({ point: enters.point, to: leaves.key });
  }
  const lines = [];
  for (const first of next.keys()) {
    let key = first;
    const line = [];
    for (let step = next.get(key)?.pop(); step; step = next.get(key)?.pop()) {
      line.push(step.point);
      key = step.to;
    }
    if (line.length > 2) {
      lines.push(line);
    }
  }
  return lines;
}

/** Where an edge from below to above meets a plane; the same edge of two triangles has one key. */
function crossing(of, low, high, axis, level, u, v) {
  const share = (level - of[low + axis]) / (of[high + axis] - of[low + axis]);
  const along = k => (of[low + k] + share * (of[high + k] - of[low + k])) / tenths;
  return {
    key: [of[low], of[low + 1], of[low + 2], of[high], of[high + 1], of[high + 2]].join(),
    point: [along(u), along(v)],
  };
}

/** The rock that a place lies in, if any. */
export function rockAt(rocks, x, y, depth) {
  return rocks.find(rock => levelCut(rock, depth).filter(line => around(line, x, y)).length % 2 === 1);
}

function around(line, x, y) {
  let inside = false;
  line.forEach(([x0, y0], i) => {
    const [x1, y1] = line[(i + 1) % line.length];
    if ((y0 < y) !== (y1 < y) && x < x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)) {
      inside = !inside;
    }
  });
  return inside;
}

/** Rocks in a line: name, kind, size and place. */
export function rocksInWords(scene) {
  const per = scene.perMetre;
  const one = value => shown(Math.round(10 * value * per) / 10);
  const span = range => one(range[1] - range[0]);
  return scene.rocks.map(rock => {
    const sizes = rock.size ? rock.size.map(one) : [span(rock.x), span(rock.y), span(rock.depth)];
    return `${rock.name}, ${rock.kind === 'ellipsoid' ? 'an' : 'a'} ${rock.kind} of ${sizes.join(' × ')} ${scene.unit} at x ${one(middle(rock.x))}, y ${one(middle(rock.y))}`;
  }).join('; ');
}
