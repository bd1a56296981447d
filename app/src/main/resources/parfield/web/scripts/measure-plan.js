// The tank from above, to scale: front at the bottom, left at the left. What a point is, is told by its shape and its words, never by colour alone.
const SVG = 'http://www.w3.org/2000/svg';
const MARGIN = 12;
const NEAR = 34;

function node(name, attributes, text) {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  if (text !== undefined) element.textContent = text;
  return element;
}

export class Plan {
  constructor(container, onChoose) {
    this.container = container;
    this.svg = node('svg', { role: 'img', 'aria-label': 'The tank from above; its places appear once the survey is read' });
    container.append(this.svg);
    this.svg.addEventListener('click', event => {
      const box = this.svg.getBoundingClientRect();
      const x = event.clientX - box.left;
      const y = event.clientY - box.top;
      const nearest = this.places
        ?.map(place => ({ place, far: Math.hypot(place.px - x, place.py - y) }))
        .sort((a, b) => a.far - b.far)[0];
      if (nearest && nearest.far < NEAR) onChoose(nearest.place.point);
    });
    new ResizeObserver(() => this.last && this.draw(this.last)).observe(container);
  }

  /** {tank, fixtures, points: [{point, state, value}], words}; states: open, done, waiting, marked, conflict; next: one of the points. */
  draw(spec) {
    this.last = spec;
    const { tank, fixtures, points, next, words } = spec;
    const room = Math.max(200, this.container.clientWidth);
    const scale = Math.min((room - 2 * MARGIN) / tank.length, 420 / tank.width);
    const width = tank.length * scale + 2 * MARGIN;
    const height = tank.width * scale + 2 * MARGIN;
    const px = x => MARGIN + x * scale;
    const py = y => MARGIN + (tank.width - y) * scale;
    this.svg.setAttribute('width', width);
    this.svg.setAttribute('height', height);
    this.svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
    this.svg.setAttribute('aria-label', words);
    this.svg.replaceChildren(
      node('rect', { x: MARGIN, y: MARGIN, width: tank.length * scale, height: tank.width * scale, class: 'water' }));
    for (const fixture of fixtures || []) {
      const w = Math.max(fixture.length, 0.04) * scale;
      const h = Math.max(fixture.width, 0.04) * scale;
      this.svg.append(node('rect', {
        x: -w / 2, y: -h / 2, width: w, height: h, class: 'fixture',
        transform: `translate(${px(fixture.x)} ${py(fixture.y)}) rotate(${-fixture.yaw * 180 / Math.PI})`,
      }));
    }
    this.places = points.map(entry => ({ ...entry, px: px(entry.point.x), py: py(entry.point.y) }));
    for (const place of this.places) {
      const gap = Math.min(...this.places.filter(other => other !== place).map(other => Math.max(Math.abs(place.px - other.px), 1.4 * Math.abs(place.py - other.py))));
      this.point(place, next && place.point.reading === next.reading, gap);
    }
  }

  point(place, isNext, gap) {
    const { px: x, py: y, state, value } = place;
    const group = node('g', { class: `point ${state}${isNext ? ' next' : ''}` });
    if (isNext) {
      group.append(node('circle', { cx: x, cy: y, r: 13, class: 'ring' }));
      group.append(node('path', { d: `M${x - 19} ${y}h9M${x + 10} ${y}h9M${x} ${y - 19}v9M${x} ${y + 10}v9`, class: 'ring' }));
    }
    if (state === 'marked') group.append(node('path', { d: `M${x} ${y - 8} L${x + 8.5} ${y + 6.5} L${x - 8.5} ${y + 6.5} Z`, class: 'marked' }));
    else if (state === 'waiting') group.append(node('rect', { x: x - 5, y: y - 5, width: 10, height: 10, class: 'waiting' }));
    else if (state === 'conflict') group.append(node('path', { d: `M${x} ${y - 8} L${x + 8} ${y} L${x} ${y + 8} L${x - 8} ${y} Z`, class: 'conflict' }));
    else group.append(node('circle', { cx: x, cy: y, r: 5, class: state }));
    if (value && gap > 26) {
      const below = y + 24 < Number(this.svg.getAttribute('height'));
      const size = gap > 40 ? 13 : 11;
      const half = value.length * size * 0.3;
      const at = Math.max(half + 2, Math.min(Number(this.svg.getAttribute('width')) - half - 2, x));
      group.append(node('text', { x: at, y: below ? y + 11 + size : y - 11, 'font-size': size, 'text-anchor': 'middle' }, value));
    }
    this.svg.append(group);
  }
}
