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

// Bands and demands that were typed and not saved are asked for before the page is left.
const demands = document.querySelector('form[data-rows]');
let changed = false;
demands?.addEventListener('input', () => { changed = true; });
demands?.addEventListener('submit', () => { changed = false; });
addEventListener('beforeunload', event => {
  if (changed) {
    event.preventDefault();
  }
});
