// Sending a big file takes a while: say so, and send it once.
document.querySelectorAll('form').forEach(form => {
  form.addEventListener('submit', event => {
    if (form.dataset.sent) {
      event.preventDefault();
      return;
    }
    if (form.method === 'post') {
      form.dataset.sent = 'yes';
      form.setAttribute('aria-busy', 'true');
    }
  });
});
addEventListener('pageshow', () => {
  document.querySelectorAll('form[data-sent]').forEach(form => {
    delete form.dataset.sent;
    form.removeAttribute('aria-busy');
  });
});
