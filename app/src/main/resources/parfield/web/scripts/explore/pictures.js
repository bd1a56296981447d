// Pictures on canvases. What is drawn is handed in; nothing is kept.
import { colour, maps } from './colours.js';
import { filled, roundStep, valueAt } from './light.js';
import { levelCut, uprightCut } from './rocks.js';

const pad = { left: 46, right: 12, top: 8, bottom: 40 };

function ink() {
  const style = getComputedStyle(document.documentElement);
  const of = name => style.getPropertyValue(name).trim();
  return { ink: of('--ink'), soft: of('--soft-ink'), line: of('--line'), paper: of('--sheet'), accent: of('--accent') };
}

/** Prepares a canvas of a given ratio; returns its drawing context and plane in CSS pixels. */
function prepare(canvas, ratio, legend = 0) {
  const width = Math.max(240, canvas.closest('.sheet').clientWidth - 32);
  const plane = { x: pad.left, y: pad.top, w: width - pad.left - pad.right, h: 0 };
  plane.h = Math.min(420, plane.w * ratio);
  if (plane.h < plane.w * ratio) {
    plane.w = plane.h / ratio;
  }
  const height = pad.top + plane.h + pad.bottom + legend;
  const dense = devicePixelRatio || 1;
  if (canvas.width !== Math.round(width * dense) || canvas.height !== Math.round(height * dense)) {
    canvas.width = Math.round(width * dense);
    canvas.height = Math.round(height * dense);
    canvas.style.width = width + 'px';
    canvas.style.height = height + 'px';
  }
  const g = canvas.getContext('2d');
  g.setTransform(dense, 0, 0, dense, 0, 0);
  g.clearRect(0, 0, width, height);
  g.font = '12px ' + getComputedStyle(document.body).fontFamily;
  canvas.plane = plane;
  plane.whole = width;
  return { g, plane, width, height, tone: ink() };
}

function axes(g, plane, tone, spanX, spanY, per, titleX, titleY, upward) {
  g.strokeStyle = tone.ink;
  g.lineWidth = 1.2;
  g.strokeRect(plane.x, plane.y, plane.w, plane.h);
  g.fillStyle = tone.soft;
  g.textAlign = 'center';
  const stepX = roundStep(spanX * per, Math.max(2, plane.w / 60));
  for (let t = 0; t <= spanX * per + 1e-6; t += stepX) {
    g.fillText(+t.toFixed(2), plane.x + (t / (spanX * per)) * plane.w, plane.y + plane.h + 15);
  }
  g.fillText(titleX, plane.x + plane.w / 2, plane.y + plane.h + 32);
  g.textAlign = 'right';
  const stepY = roundStep(spanY * per, Math.max(2, plane.h / 40));
  for (let t = 0; t <= spanY * per + 1e-6; t += stepY) {
    const share = t / (spanY * per);
    g.fillText(+t.toFixed(2), plane.x - 6, plane.y + plane.h * (upward ? 1 - share : share) + 4);
  }
  g.save();
  g.translate(11, plane.y + plane.h / 2);
  g.rotate(-Math.PI / 2);
  g.textAlign = 'center';
  g.fillText(titleY, 0, 0);
  g.restore();
}

function hatch(g, plane, path, gap, slope, stroke) {
  g.save();
  path();
  g.clip();
  g.strokeStyle = stroke;
  g.lineWidth = 1;
  g.beginPath();
  for (let t = -plane.h; t < plane.w + plane.h; t += gap) {
    g.moveTo(plane.x + t, plane.y + (slope > 0 ? plane.h : 0));
    g.lineTo(plane.x + t + plane.h, plane.y + (slope > 0 ? 0 : plane.h));
  }
  g.stroke();
  g.restore();
}

const stone = [141, 135, 128];

/** Faces of cut rocks, as in the pictures of the server. */
function rocks(g, plane, lines, spanX, spanY, upward) {
  if (lines.length === 0) {
    return;
  }
  g.save();
  g.beginPath();
  g.rect(plane.x, plane.y, plane.w, plane.h);
  g.clip();
  g.fillStyle = `rgb(${stone})`;
  g.strokeStyle = '#10181b';
  g.lineWidth = 1.6;
  for (const rock of lines) {
    g.beginPath();
    for (const line of rock) {
      line.forEach(([x, y], i) => {
        const at = [plane.x + (x / spanX) * plane.w, plane.y + (upward ? 1 - y / spanY : y / spanY) * plane.h];
        i ? g.lineTo(...at) : g.moveTo(...at);
      });
      g.closePath();
    }
    g.fill('evenodd');
    g.stroke();
  }
  g.restore();
}

/** Colours of a map packed as pixels. */
const packed = {};
function palette(map) {
  return packed[map] ??= Uint32Array.from(maps[map], ([r, g, b]) => 0xff000000 | (b << 16) | (g << 8) | r);
}

/** Where each pixel of a side lies between the cells: lower cell and share of the next. */
function between(pixels, cells, reversed) {
  const at = new Uint16Array(pixels);
  const share = new Float32Array(pixels);
  for (let i = 0; i < pixels; i++) {
    const t = Math.max(0, Math.min(cells - 1, ((reversed ? pixels - 1 - i : i) + 0.5) / pixels * cells - 0.5));
    at[i] = Math.min(cells - 2, Math.floor(t));
    share[i] = t - at[i];
  }
  return { at, share };
}

/** Colours of a plane; rows from the front pane (upward) or from the water line (down). */
function image(g, plane, of, upward, map, scale) {
  const w = Math.min(240, of.columns * 4);
  const h = Math.max(2, Math.round((w * plane.h) / plane.w));
  const pixels = new ImageData(w, h);
  const out = new Uint32Array(pixels.data.buffer);
  const colours = palette(map);
  const rock = 0xff000000 | (stone[2] << 16) | (stone[1] << 8) | stone[0];
  const x = between(w, of.columns, false);
  const y = between(h, of.rows, upward);
  const per = 255 / (scale.high - scale.low);
  for (let j = 0; j < h; j++) {
    const row = y.at[j] * of.columns;
    for (let i = 0; i < w; i++) {
      const k = row + x.at[i];
      const upper = of.values[k] + (of.values[k + 1] - of.values[k]) * x.share[i];
      const lower = of.values[k + of.columns] + (of.values[k + of.columns + 1] - of.values[k + of.columns]) * x.share[i];
      const value = upper + (lower - upper) * y.share[j];
      out[j * w + i] = value === value ? colours[Math.max(0, Math.min(255, Math.round((value - scale.low) * per)))] : rock;
    }
  }
  const sheet = image.sheet ??= document.createElement('canvas');
  sheet.width = w;
  sheet.height = h;
  sheet.getContext('2d').putImageData(pixels, 0, 0);
  g.imageSmoothingEnabled = true;
  g.drawImage(sheet, plane.x, plane.y, plane.w, plane.h);
}

function isolines(g, plane, of, upward, levels, thick, names) {
  const clean = of.values;
  const contour = d3.contours().size([of.columns, of.rows]).smooth(true);
  for (const level of levels) {
    const strong = thick.has(level);
    g.beginPath();
    let longest = null;
    for (const polygon of contour.contour(clean, level).coordinates) {
      for (const ring of polygon) {
        let open = false;
        ring.forEach(([x, y], i) => {
          const edge = x <= 0.01 || y <= 0.01 || x >= of.columns - 0.01 || y >= of.rows - 0.01;
          const px = plane.x + (x / of.columns) * plane.w;
          const py = plane.y + (upward ? 1 - y / of.rows : y / of.rows) * plane.h;
          if (edge || !open) {
            g.moveTo(px, py);
          } else {
            g.lineTo(px, py);
          }
          open = !edge;
          if (!edge && i > 2 && (!longest || ring.length > longest.n)) {
            longest = { n: ring.length, x: px, y: py };
          }
        });
      }
    }
    g.strokeStyle = 'rgba(255,255,255,.75)';
    g.lineWidth = strong ? 4 : 2;
    g.stroke();
    g.strokeStyle = '#10181b';
    g.lineWidth = strong ? 2.2 : 0.8;
    g.stroke();
    if (longest && longest.y > plane.y + 12 && longest.x > plane.x + 18 && longest.x < plane.x + plane.w - 24) {
      label(g, names?.get(level) ?? String(level), longest.x, longest.y);
    }
  }
}

function label(g, text, x, y) {
  g.textAlign = 'center';
  g.lineJoin = 'round';
  g.strokeStyle = 'rgba(252,252,250,.9)';
  g.lineWidth = 3.5;
  g.strokeText(text, x, y + 4);
  g.fillStyle = '#10181b';
  g.fillText(text, x, y + 4);
}

function fixtures(g, plane, scene, rig) {
  const { length, width } = scene.tank;
  g.save();
  g.beginPath();
  g.rect(plane.x, plane.y, plane.w, plane.h);
  g.clip();
  for (const hanging of rig.hangings) {
    const fixture = scene.fixtures[hanging.fixture];
    g.save();
    g.translate(plane.x + (hanging.x / length) * plane.w, plane.y + (1 - hanging.y / width) * plane.h);
    g.rotate(-(hanging.yaw ?? 0));
    const s = plane.w / length;
    g.strokeStyle = '#ffffff';
    g.lineWidth = 3;
    for (const pass of ['#ffffff', '#10181b']) {
      g.strokeStyle = pass;
      g.lineWidth = pass === '#ffffff' ? 3 : 1.2;
      g.setLineDash(pass === '#ffffff' ? [] : [5, 3]);
      g.strokeRect((-fixture.length / 2) * s, (-fixture.width / 2) * s, fixture.length * s, fixture.width * s);
      g.setLineDash([]);
      for (const emitter of fixture.emitters) {
        g.strokeRect(emitter.x * s - 4, -emitter.y * s - 4, 8, 8);
      }
    }
    g.restore();
  }
  g.restore();
}

function legend(g, plane, tone, scale, map, y) {
  const w = Math.min(plane.w, 320);
  for (let i = 0; i < w; i++) {
    const [r, gg, b] = colour(map, i / w);
    g.fillStyle = `rgb(${r},${gg},${b})`;
    g.fillRect(plane.x + i, y, 1.5, 10);
  }
  g.fillStyle = tone.soft;
  g.textAlign = 'left';
  g.fillText(Math.round(scale.low), plane.x, y + 24);
  g.textAlign = 'right';
  g.fillText(Math.round(scale.high), plane.x + w, y + 24);
  g.textAlign = 'center';
  g.fillText('PPFD, µmol m⁻² s⁻¹', plane.x + w / 2, y + 24);
}

const standing = {
  below: [226, 232, 236],
  inside: [176, 214, 190],
  above: [240, 206, 178],
  close: [250, 250, 246],
};

/** The plane seen from above. */
export function plan(canvas, spec) {
  const { scene, rig, scale, map, band, mode, depth, interval, readings, cross } = spec;
  const of = filled(spec.of);
  const { length, width } = scene.tank;
  const { g, plane, tone } = prepare(canvas, width / length, 32);
  if (mode === 'band' && band) {
    const near = interval ?? { low: of, high: of };
    const stand = (low, high) => high < band.from ? 'below' : low > band.to ? 'above'
      : low >= band.from && high <= band.to ? 'inside' : 'close';
    const w = 96;
    const h = Math.round((w * plane.h) / plane.w);
    for (let j = 0; j < h; j++) {
      for (let i = 0; i < w; i++) {
        const u = (i + 0.5) / w;
        const v = (j + 0.5) / h;
        const kind = stand(valueAt(near.low, u, 1 - v), valueAt(near.high, u, 1 - v));
        g.fillStyle = `rgb(${standing[kind]})`;
        const x = plane.x + (i / w) * plane.w;
        const y = plane.y + (j / h) * plane.h;
        g.fillRect(x, y, plane.w / w + 0.6, plane.h / h + 0.6);
        g.strokeStyle = '#39464c';
        g.lineWidth = 1;
        g.beginPath();
        if (kind === 'below' && (i + j) % 3 === 0) {
          g.moveTo(x, y + plane.h / h);
          g.lineTo(x + plane.w / w, y);
        } else if (kind === 'above' && (i - j + 300) % 3 === 0) {
          g.moveTo(x, y);
          g.lineTo(x + plane.w / w, y + plane.h / h);
        } else if (kind === 'close' && i % 3 === 0 && j % 3 === 0) {
          g.rect(x, y, 1, 1);
        }
        g.stroke();
      }
    }
    isolines(g, plane, of, true, [band.from, band.to], new Set([band.from, band.to]));
    let x = plane.x;
    for (const [kind, words] of [['below', '/ below'], ['inside', 'in the band'], ['above', '\\ above'], ['close', '· too close to call']]) {
      g.fillStyle = `rgb(${standing[kind]})`;
      g.fillRect(x, plane.y + plane.h + 44, 14, 12);
      g.strokeStyle = tone.soft;
      g.strokeRect(x, plane.y + plane.h + 44, 14, 12);
      g.fillStyle = tone.ink;
      g.textAlign = 'left';
      g.fillText(words, x + 18, plane.y + plane.h + 54);
      x += 30 + g.measureText(words).width;
    }
  } else {
    image(g, plane, of, true, map, scale);
    const step = roundStep(scale.high - scale.low, 8);
    const levels = [];
    for (let level = Math.ceil(scale.low / step) * step; level < scale.high; level += step) {
      levels.push(level);
    }
    const thick = new Set(band ? [band.from, band.to] : []);
    isolines(g, plane, of, true, [...new Set([...levels, ...thick])], thick,
      band && new Map([[band.from, `${band.name} ${band.from}`], [band.to, `${band.name} ${band.to}`]]));
    legend(g, plane, tone, scale, map, plane.y + plane.h + 42);
  }
  unmeasured(g, plane, scene);
  rocks(g, plane, scene.rocks.map(rock => levelCut(rock, depth)), length, width, true);
  fixtures(g, plane, scene, rig);
  for (const reading of readings) {
    const x = plane.x + (reading.x / length) * plane.w;
    const y = plane.y + (1 - reading.y / width) * plane.h;
    g.beginPath();
    g.arc(x, y, 3, 0, 7);
    g.fillStyle = '#ffffff';
    g.fill();
    g.strokeStyle = '#10181b';
    g.lineWidth = 1.3;
    g.stroke();
  }
  axes(g, plane, tone, length, width, scene.perMetre, `from the left pane, ${scene.unit}`, `from the front, ${scene.unit}`, true);
  crosshair(g, plane, cross, true);
}

/** Hatches what lies outside the rectangle of all readings. */
function unmeasured(g, plane, scene) {
  if (!scene.readings.length) {
    return;
  }
  const { length, width } = scene.tank;
  const xs = scene.readings.map(r => r.x / length);
  const ys = scene.readings.map(r => r.y / width);
  const [l, r, f, b] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  hatch(g, plane, () => {
    g.beginPath();
    g.rect(plane.x, plane.y, plane.w, plane.h);
    g.rect(plane.x + l * plane.w, plane.y + (1 - f) * plane.h, (r - l) * plane.w, -(b - f) * plane.h);
    g.clip('evenodd');
    g.beginPath();
    g.rect(plane.x, plane.y, plane.w, plane.h);
  }, 8, 1, 'rgba(255,255,255,.7)');
}

function crosshair(g, plane, cross, upward) {
  if (!cross) {
    return;
  }
  const x = plane.x + cross.u * plane.w;
  const y = plane.y + (upward ? 1 - cross.v : cross.v) * plane.h;
  for (const [stroke, width] of [['#ffffff', 4], ['#10181b', 1.5]]) {
    g.strokeStyle = stroke;
    g.lineWidth = width;
    g.beginPath();
    g.moveTo(x - 9, y);
    g.lineTo(x + 9, y);
    g.moveTo(x, y - 9);
    g.lineTo(x, y + 9);
    g.stroke();
  }
}

/** The upright plane through the middle, seen from the front. */
export function side(canvas, spec) {
  const { scene, rig, scale, map, band, depth, cross } = spec;
  const of = filled(spec.of);
  const { length, depth: deep } = scene.tank;
  const { g, plane, tone } = prepare(canvas, deep / length);
  image(g, plane, of, false, map, scale);
  const step = roundStep(scale.high - scale.low, 8);
  const levels = [];
  for (let level = Math.ceil(scale.low / step) * step; level < scale.high; level += step) {
    levels.push(level);
  }
  const thick = new Set(band ? [band.from, band.to] : []);
  isolines(g, plane, of, false, [...new Set([...levels, ...thick])], thick);
  rocks(g, plane, scene.rocks.map(rock => uprightCut(rock, scene.tank.width / 2)), length, deep, false);
  const y = plane.y + (depth / deep) * plane.h;
  g.setLineDash([6, 4]);
  g.strokeStyle = '#ffffff';
  g.lineWidth = 2;
  g.beginPath();
  g.moveTo(plane.x, y);
  g.lineTo(plane.x + plane.w, y);
  g.stroke();
  g.setLineDash([]);
  for (const hanging of rig.hangings) {
    const x = plane.x + (hanging.x / length) * plane.w;
    g.fillStyle = tone.ink;
    g.beginPath();
    g.moveTo(x - 6, plane.y - 7);
    g.lineTo(x + 6, plane.y - 7);
    g.lineTo(x, plane.y - 1);
    g.fill();
  }
  axes(g, plane, tone, length, deep, scene.perMetre, `from the left pane, ${scene.unit}`, `depth, ${scene.unit}`, false);
  crosshair(g, plane, cross, false);
}

/** Share of each depth that is in the band, for one or two rigs. */
export function byDepth(canvas, spec) {
  const { scene, series, depth } = spec;
  const { g, plane, tone } = prepare(canvas, 0.55);
  const deep = scene.tank.depth;
  series.forEach((shares, n) => {
    g.strokeStyle = n ? tone.ink : tone.accent;
    g.lineWidth = 2.2;
    g.setLineDash(n ? [7, 4] : []);
    g.beginPath();
    shares.forEach((share, k) => {
      const x = plane.x + share * plane.w;
      const y = plane.y + ((k + 0.5) / shares.length) * plane.h;
      k ? g.lineTo(x, y) : g.moveTo(x, y);
    });
    g.stroke();
  });
  g.setLineDash([6, 4]);
  g.strokeStyle = tone.soft;
  g.lineWidth = 1;
  g.beginPath();
  g.moveTo(plane.x, plane.y + (depth / deep) * plane.h);
  g.lineTo(plane.x + plane.w, plane.y + (depth / deep) * plane.h);
  g.stroke();
  g.setLineDash([]);
  percentAxes(g, plane, tone, deep, scene);
}

function percentAxes(g, plane, tone, deep, scene) {
  g.strokeStyle = tone.ink;
  g.strokeRect(plane.x, plane.y, plane.w, plane.h);
  g.fillStyle = tone.soft;
  g.textAlign = 'center';
  for (let p = 0; p <= 100; p += 25) {
    g.fillText(p, plane.x + (p / 100) * plane.w, plane.y + plane.h + 15);
  }
  g.fillText('share of the depth inside the band, %', plane.x + plane.w / 2, plane.y + plane.h + 32);
  g.textAlign = 'right';
  const step = roundStep(deep * scene.perMetre, 5);
  for (let t = 0; t <= deep * scene.perMetre + 1e-6; t += step) {
    g.fillText(+t.toFixed(2), plane.x - 6, plane.y + (t / (deep * scene.perMetre)) * plane.h + 4);
  }
  g.save();
  g.translate(11, plane.y + plane.h / 2);
  g.rotate(-Math.PI / 2);
  g.textAlign = 'center';
  g.fillText(`depth, ${scene.unit}`, 0, 0);
  g.restore();
}

/** How much of the water has which PPFD, with the bands marked. */
export function histogram(canvas, spec) {
  const { volumes, scale, bands } = spec;
  const { g, plane, tone } = prepare(canvas, 0.55);
  const bins = 30;
  const counted = volumes.map(volume => {
    const counts = new Float64Array(bins);
    let n = 0;
    for (const value of volume) {
      if (!Number.isNaN(value)) {
        n++;
        counts[Math.max(0, Math.min(bins - 1, Math.floor((bins * (value - scale.low)) / (scale.high - scale.low))))]++;
      }
    }
    return counts.map(c => c / n);
  });
  const top = Math.max(...counted.flatMap(c => [...c]), 0.01);
  const x = value => plane.x + plane.w * Math.max(0, Math.min(1, (value - scale.low) / (scale.high - scale.low)));
  counted.forEach((shares, k) => {
    g.fillStyle = tone.accent;
    g.strokeStyle = tone.ink;
    shares.forEach((share, i) => {
      const h = (share / top) * plane.h * 0.9;
      const at = plane.x + (i / bins) * plane.w;
      if (k === 0) {
        g.globalAlpha = 0.55;
        g.fillRect(at, plane.y + plane.h - h, plane.w / bins - 1, h);
        g.globalAlpha = 1;
      } else {
        g.strokeRect(at + 0.5, plane.y + plane.h - h, plane.w / bins - 2, h);
      }
    });
  });
  bands.forEach((band, i) => {
    g.strokeStyle = tone.ink;
    g.lineWidth = 2;
    const y = plane.y + 12 + 16 * i;
    g.beginPath();
    g.moveTo(x(band.from), y + 5);
    g.lineTo(x(band.from), y);
    g.lineTo(x(band.to), y);
    g.lineTo(x(band.to), y + 5);
    g.stroke();
    g.fillStyle = tone.ink;
    g.textAlign = 'left';
    g.fillText(band.name, x(band.from) + 4, y - 2);
  });
  g.lineWidth = 1.2;
  g.strokeStyle = tone.ink;
  g.strokeRect(plane.x, plane.y, plane.w, plane.h);
  g.fillStyle = tone.soft;
  g.textAlign = 'center';
  const step = roundStep(scale.high - scale.low, 6);
  for (let t = Math.ceil(scale.low / step) * step; t <= scale.high; t += step) {
    g.fillText(t, x(t), plane.y + plane.h + 15);
  }
  g.fillText('PPFD in the water, µmol m⁻² s⁻¹', plane.x + plane.w / 2, plane.y + plane.h + 32);
}

/** Second rig less first: discs of darker and brighter, in percent of the first. */
export function difference(canvas, spec) {
  const { scene, a, b } = spec;
  const { length, width } = scene.tank;
  const { g, plane, tone } = prepare(canvas, width / length, 32);
  const nx = 14;
  const ny = Math.max(4, Math.round((nx * width) / length));
  for (let j = 0; j < ny; j++) {
    for (let i = 0; i < nx; i++) {
      const u = (i + 0.5) / nx;
      const v = (j + 0.5) / ny;
      const change = valueAt(b, u, v) / valueAt(a, u, v) - 1;
      if (!Number.isFinite(change)) {
        continue;
      }
      g.beginPath();
      g.arc(plane.x + u * plane.w, plane.y + (1 - v) * plane.h, Math.min(plane.w / nx / 2, 2 + 22 * Math.sqrt(Math.abs(change))), 0, 7);
      g.strokeStyle = tone.ink;
      g.lineWidth = 1.4;
      if (change > 0) {
        g.fillStyle = tone.accent;
        g.globalAlpha = 0.5;
        g.fill();
        g.globalAlpha = 1;
      }
      g.stroke();
    }
  }
  axes(g, plane, tone, length, width, scene.perMetre, `from the left pane, ${scene.unit}`, `from the front, ${scene.unit}`, true);
  g.fillStyle = tone.ink;
  g.textAlign = 'left';
  g.fillText('second rig: filled, brighter; ring, darker', plane.x, plane.y + plane.h + 54);
}
