// In the trade-off, arrow keys go from point to point as they lie, from left to right.
const points = [...document.querySelectorAll('.trade a.point')];
const place = point => point.querySelector('g').getCTM().e;
points.sort((a, b) => place(a) - place(b));
for (const point of points) {
  point.addEventListener('keydown', event => {
    const step = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key];
    if (step) {
      event.preventDefault();
      points[(points.indexOf(point) + step + points.length) % points.length].focus();
    }
  });
}
