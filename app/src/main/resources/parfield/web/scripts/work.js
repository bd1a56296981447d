// Follows work in the background: <section data-work="/bench/…/jobs/…">. When it ends, the page is
// loaded again and shows what was found.
for (const place of document.querySelectorAll('[data-work]')) {
  follow(place);
}

function follow(place) {
  const bar = place.querySelector('progress');
  const words = place.querySelector('[data-words]');
  const cancel = place.querySelector('[data-cancel]');
  const begun = performance.now();
  place.hidden = true;
  const show = setTimeout(() => { place.hidden = false; }, 500);
  const showBar = setTimeout(() => { bar.hidden = false; }, 5000);

  cancel?.addEventListener('click', async () => {
    cancel.disabled = true;
    words.textContent = cancel.dataset.stopping;
    await fetch(place.dataset.work + '/cancel', { method: 'POST' });
  });

  const events = new EventSource(place.dataset.work + '/events');
  events.addEventListener('job', event => {
    const job = JSON.parse(event.data);
    if (!cancel?.disabled) {
      words.textContent = job.words;
    }
    if (job.share > 0) {
      bar.value = job.share;
    } else {
      bar.removeAttribute('value');
    }
    if (job.state === 'FAILED') {
      events.close();
      clearTimeout(show);
      clearTimeout(showBar);
      place.hidden = false;
      place.classList.replace('next', 'problem');
      bar.hidden = true;
      cancel?.remove();
      words.textContent = job.problem;
    } else if (job.state === 'DONE' || job.state === 'STOPPED') {
      events.close();
      const wait = Math.max(0, 150 - (performance.now() - begun));
      setTimeout(() => location.replace(place.dataset.then || location.pathname), wait);
    }
  });
}
