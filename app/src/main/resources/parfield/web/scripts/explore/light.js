// Light as numbers: fields of channels at full output, weighted by dials. No page here.

/** Output 0 to 1 of each channel of a fixture at its dials: its curve at own dial × masters. */
export function outputs(fixture, dials) {
  return fixture.channels.map(channel => {
    let percent = dials[channel.name] ?? 100;
    for (const master of fixture.masters) {
      if (master.scales.includes(channel.name)) {
        percent *= (dials[master.name] ?? 100) / 100;
      }
    }
    const below = Math.min(99, Math.floor(percent));
    const share = percent - below;
    return channel.outputs[below] * (1 - share) + channel.outputs[below + 1] * share;
  });
}

/** Kinds of fixtures of a rig, in the order in which they are first hung. */
export function kinds(rig) {
  return [...new Set(rig.hangings.map(hanging => hanging.fixture))];
}

/** The light of a rig in every cell: the weighted sum of its fields. */
export function summed(fields, cells, rig, fixtures) {
  const sum = new Float32Array(cells);
  let at = 0;
  for (const kind of kinds(rig)) {
    for (const output of outputs(fixtures[kind], rig.dials[kind] ?? {})) {
      const field = fields.subarray(at, at + cells);
      for (let i = 0; i < cells; i++) {
        sum[i] += output * field[i];
      }
      at += cells;
    }
  }
  return sum;
}

/** A level plane of a volume, between its layers. */
export function plane(volume, lattice, depthShare) {
  const { columns, rows, layers } = lattice;
  const z = Math.max(0, Math.min(layers - 1, depthShare * layers - 0.5));
  const k = Math.min(layers - 2, Math.floor(z));
  const share = z - k;
  const size = columns * rows;
  const values = new Float32Array(size);
  for (let i = 0; i < size; i++) {
    values[i] = volume[k * size + i] * (1 - share) + volume[(k + 1) * size + i] * share;
  }
  return { columns, rows, values };
}

/** The upright plane through the middle, seen from the front; rows run down. */
export function section(volume, lattice) {
  const { columns, rows, layers } = lattice;
  const values = new Float32Array(columns * layers);
  const back = Math.floor(rows / 2);
  const front = rows % 2 ? back : back - 1;
  for (let k = 0; k < layers; k++) {
    for (let i = 0; i < columns; i++) {
      const at = row => volume[(k * rows + row) * columns + i];
      values[k * columns + i] = (at(front) + at(back)) / 2;
    }
  }
  return { columns, rows: layers, values };
}

/** The value of a plane at shares of its sides, between its cells. */
export function valueAt(of, u, v) {
  const x = Math.max(0, Math.min(of.columns - 1, u * of.columns - 0.5));
  const y = Math.max(0, Math.min(of.rows - 1, v * of.rows - 0.5));
  const i = Math.min(of.columns - 2, Math.floor(x));
  const j = Math.min(of.rows - 2, Math.floor(y));
  const at = (a, b) => of.values[b * of.columns + a];
  const upper = at(i, j) * (1 - x + i) + at(i + 1, j) * (x - i);
  const lower = at(i, j + 1) * (1 - x + i) + at(i + 1, j + 1) * (x - i);
  return upper * (1 - y + j) + lower * (y - j);
}

/** Mean, least, greatest, evenness and share inside a band; cells in rock left out. */
export function figures(values, band) {
  let n = 0, sum = 0, min = Infinity, max = 0, inside = 0;
  for (const value of values) {
    if (!Number.isNaN(value)) {
      n++;
      sum += value;
      min = Math.min(min, value);
      max = Math.max(max, value);
      if (band && value >= band.from && value <= band.to) {
        inside++;
      }
    }
  }
  const mean = sum / n;
  return { mean, min, max, evenness: mean > 0 ? min / mean : 0, coverage: inside / n };
}

/** Share of each layer that is inside a band. */
export function coverageByDepth(volume, lattice, band) {
  const size = lattice.columns * lattice.rows;
  return Array.from({ length: lattice.layers }, (_, k) =>
    figures(volume.subarray(k * size, (k + 1) * size), band).coverage);
}

/** A round step that divides a span into about so many parts. */
export function roundStep(span, parts) {
  const raw = span / parts;
  const power = 10 ** Math.floor(Math.log10(raw));
  return [1, 2, 2.5, 5, 10].map(f => f * power).find(step => step >= raw);
}

/** Values with those in rock (NaN) taken from the water beside them, so that lines and colours run up to the rock's own outline. */
export function filled(of) {
  const { columns, rows } = of;
  return { ...of, values: spreadIn(of.values, columns, rows, 1) };
}

/** The same of a volume. */
export function filledVolume({ values, lattice }) {
  return { lattice, values: spreadIn(values, lattice.columns, lattice.rows, lattice.layers) };
}

function spreadIn(values, columns, rows, layers) {
  let open = [];
  for (let i = 0; i < values.length; i++) {
    if (Number.isNaN(values[i])) {
      open.push(i);
    }
  }
  if (open.length === 0 || open.length === values.length) {
    return values;
  }
  const out = Float32Array.from(values);
  const level = columns * rows;
  while (open.length > 0) {
    const found = [];
    const left = [];
    for (const i of open) {
      const x = i % columns;
      const y = Math.floor(i / columns) % rows;
      const z = Math.floor(i / level);
      let sum = 0;
      let n = 0;
      const take = k => {
        if (out[k] === out[k]) {
          sum += out[k];
          n++;
        }
      };
      x > 0 && take(i - 1);
      x < columns - 1 && take(i + 1);
      y > 0 && take(i - columns);
      y < rows - 1 && take(i + columns);
      z > 0 && take(i - level);
      z < layers - 1 && take(i + level);
      n > 0 ? found.push([i, sum / n]) : left.push(i);
    }
    found.forEach(([i, value]) => { out[i] = value; });
    open = left;
  }
  return out;
}
