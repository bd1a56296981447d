// What every page has: unit of length and theme, kept in cookies for a year.
const year = 60 * 60 * 24 * 365;

function keep(name, value) {
  document.cookie = `${name}=${value}; path=/; max-age=${year}; samesite=strict`;
}

const root = document.documentElement;

document.querySelector('[data-choose-length]')?.addEventListener('click', () => {
  keep('parfield-length', root.dataset.length === 'cm' ? 'in' : 'cm');
  location.reload();
});

document.querySelector('[data-choose-theme]')?.addEventListener('click', () => {
  const dark = root.dataset.theme
    ? root.dataset.theme === 'dark'
    : matchMedia('(prefers-color-scheme: dark)').matches;
  root.dataset.theme = dark ? 'light' : 'dark';
  keep('parfield-theme', root.dataset.theme);
  document.dispatchEvent(new CustomEvent('parfield:theme'));
});

// A number field never changes by the mouse wheel.
document.addEventListener('wheel', event => {
  if (event.target === document.activeElement && event.target.matches('input[type=number]')) {
    event.target.blur();
  }
}, { passive: true });
