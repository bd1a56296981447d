// A phone that scanned the code has it behind the number sign of the address: enter it.
const form = document.querySelector('[data-pair]');
const code = location.hash.slice(1);
if (form && /^[0-9A-Z]{8}$/.test(code)) {
  history.replaceState(null, '', location.pathname);
  form.code.value = code;
  form.requestSubmit();
}
