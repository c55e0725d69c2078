// Sends a form marked data-send without leaving the page, and puts the answer's main in place of ours.
// Without scripts the same form works by itself.
document.addEventListener('submit', async (event) => {
  const form = event.target;
  if (!form.matches('[data-send]')) {
    return;
  }
  event.preventDefault();
  if (form.dataset.busy) {
    return;
  }
  form.dataset.busy = 'yes';
  document.documentElement.dataset.sending = 'yes';
  const body = new URLSearchParams(new FormData(form, event.submitter));
  try {
    const answer = await fetch(form.action, {method: 'POST', body, headers: {'X-Sent': 'script'}});
    const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
    const fresh = page.querySelector('main');
    if (!fresh) {
      location.assign(answer.url);
      return;
    }
    if (answer.redirected) {
      history.replaceState(null, '', answer.url);
    }
    show(fresh, page.querySelector('.notice'));
  } catch (e) {
    // Not sent: the form stays as it is, to be pressed again.
    document.documentElement.dataset.network = 'off';
  } finally {
    delete form.dataset.busy;
    delete document.documentElement.dataset.sending;
  }
});

// Replaces the page's main, keeping the place of the focus where it still exists.
function show(fresh, notice) {
  const focus = document.activeElement && document.activeElement.id;
  document.querySelectorAll('.notice').forEach((old) => old.remove());
  const main = document.querySelector('main');
  if (notice) {
    main.before(document.adoptNode(notice));
  }
  main.replaceWith(document.adoptNode(fresh));
  const again = focus && document.getElementById(focus);
  if (again) {
    again.focus({preventScroll: true});
  }
  document.dispatchEvent(new CustomEvent('fresh'));
}
