// A fault's line is one click away; what was typed and not saved is asked for before it is left.
const text = document.querySelector('#text');
for (const link of document.querySelectorAll('[data-line]')) {
  link.addEventListener('click', event => {
    event.preventDefault();
    const lines = text.value.split('\n');
    const line = Math.max(1, Number(link.dataset.line));
    const start = lines.slice(0, line - 1).join('\n').length + (line > 1 ? 1 : 0);
    text.focus();
    text.setSelectionRange(start, start + (lines[line - 1] ?? '').length);
    text.scrollTop = (text.scrollHeight / lines.length) * Math.max(0, line - 6);
  });
}
let changed = false;
text?.addEventListener('input', () => { changed = true; });
text?.form.addEventListener('submit', () => { changed = false; });
addEventListener('beforeunload', event => {
  if (changed) {
    event.preventDefault();
  }
});
