// Sends a form marked data-send without leaving the page, and puts the answer's main in place of ours.
// Without scripts the same form works by itself.
//
// No press is lost. Nothing is swapped under a finger that is down, here or in live.js. Presses go out one
// after the other; the page stays as it is until the last of them is answered, so that one that was not
// sent can be pressed again. A second press of the same form, before its answer, is the same press.
const root = document.documentElement;
let line = Promise.resolve();
let waiting = 0;

document.addEventListener('submit', (event) => {
  const form = event.target;
  if (!form.matches('[data-send]')) {
    return;
  }
  event.preventDefault();
  if (form.dataset.busy) {
    return;
  }
  form.dataset.busy = 'yes';
  event.submitter?.setAttribute('aria-busy', 'true');
  root.dataset.sending = 'yes';
  waiting += 1;
  const body = new URLSearchParams(new FormData(form, event.submitter));
  const at = performance.now();
  line = line.then(() => send(form.action, body, at)).finally(() => {
    delete form.dataset.busy;
    event.submitter?.removeAttribute('aria-busy');
    waiting -= 1;
    if (!waiting) {
      delete root.dataset.sending;
    }
  });
});

async function send(action, body, at) {
  try {
    const answer = await fetch(action, {method: 'POST', body, headers: {'X-Sent': 'script'}});
    root.dataset.network = 'on';
    const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
    const fresh = page.querySelector('main');
    if (!fresh) {
      location.assign(answer.url);
      return;
    }
    await letGo();
    const notice = page.querySelector('.notice');
    if (waiting > 1) {
      tell(notice ?? inShort(page.querySelector('.fault')));
      return;
    }
    if (answer.redirected) {
      history.replaceState(null, '', answer.url);
    }
    show(fresh, notice, at);
  } catch (e) {
    // Not sent: the form stays as it is, to be pressed again.
    root.dataset.network = 'off';
  }
}

// Replaces the page's main, keeping the place of the focus where it still exists, and the notices that the
// cook had not seen when pressing.
function show(fresh, notice, at) {
  const focus = document.activeElement && document.activeElement.id;
  document.querySelectorAll('.notice').forEach((old) => {
    if (Number(old.dataset.told || 0) <= at) {
      old.remove();
    }
  });
  tell(notice);
  document.querySelector('main').replaceWith(document.adoptNode(fresh));
  const again = focus && document.getElementById(focus);
  if (again) {
    again.focus({preventScroll: true});
  }
  document.dispatchEvent(new CustomEvent('fresh'));
}

function tell(notice) {
  if (notice) {
    notice.dataset.told = performance.now();
    document.querySelector('main').before(document.adoptNode(notice));
  }
}

// What is wrong with a field, said where the field itself is not shown.
function inShort(fault) {
  if (!fault) {
    return null;
  }
  const notice = document.createElement('p');
  notice.className = 'notice';
  notice.setAttribute('role', 'alert');
  notice.textContent = fault.textContent;
  return notice;
}

// ---- a finger that is down ----

// A click comes some milliseconds after the finger is up.
const CLICK = 100;
let up = 0;

addEventListener('pointerdown', () => {
  clearTimeout(up);
  root.dataset.pressed = 'yes';
}, true);

for (const end of ['pointerup', 'pointercancel', 'blur']) {
  addEventListener(end, (event) => {
    if (event.type !== 'blur' || event.target === window) {
      clearTimeout(up);
      up = setTimeout(release, CLICK);
    }
  }, true);
}

function release() {
  delete root.dataset.pressed;
  document.dispatchEvent(new CustomEvent('let-go'));
}

function letGo() {
  return root.dataset.pressed
    ? new Promise((done) => {
      document.addEventListener('let-go', done, {once: true});
    })
    : Promise.resolve();
}
