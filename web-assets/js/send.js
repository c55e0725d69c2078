// Sends a form marked data-send without leaving the page, and puts the answer's main in place of ours.
// Without scripts the same form works by itself.
//
// No press is lost. Nothing is swapped under a finger that is down, here or in live.js. Presses go out one
// after the other; the page stays as it is until the last of them is answered, so that one that was not
// sent can be pressed again. A second press of the same form, before its answer, is the same press. When an
// answer asks who it is, the presses behind it wait for the name.
import {say, swap} from './swap.js';

// What is not answered by then is not on its way any more.
const LONGEST = 30000;
const root = document.documentElement;
let line = Promise.resolve();
let waiting = 0;
let asked = false;
let unnamed = [];

document.addEventListener('submit', (event) => {
  const form = event.target;
  if (!form.matches(asked ? '[data-send], [data-who]' : '[data-send]')) {
    return;
  }
  event.preventDefault();
  if (form.dataset.busy) {
    return;
  }
  form.dataset.busy = 'yes';
  event.submitter?.setAttribute('aria-busy', 'true');
  queue({
    action: form.action,
    body: new URLSearchParams(new FormData(form, event.submitter)),
    at: performance.now(),
    names: form.matches('[data-who]'),
    form,
    submitter: event.submitter,
    over() {
      delete form.dataset.busy;
      event.submitter?.removeAttribute('aria-busy');
    },
  });
});

function queue(press) {
  root.dataset.sending = 'yes';
  waiting += 1;
  line = line.then(() => send(press)).finally(() => {
    press.over();
    waiting -= 1;
    if (!waiting) {
      delete root.dataset.sending;
    }
  });
}

async function send(press) {
  if (asked && !press.names) {
    unnamed.push(press);
    return;
  }
  try {
    const {action, body, at} = press;
    const answer = await fetch(action, {
      method: 'POST', body, headers: {'X-Part': 'main'}, signal: AbortSignal.timeout(LONGEST),
    });
    root.dataset.network = 'on';
    if (answer.status === 401 && press.form) {
      // Signed out: sent again without us, so that the whole page lets in and keeps what was typed.
      press.form.removeAttribute('data-send');
      press.over();
      press.form.requestSubmit(press.submitter);
      return;
    }
    const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
    const fresh = page.querySelector('main');
    if (!fresh) {
      location.assign(answer.url);
      return;
    }
    if (press.names) {
      asked = false;
      unnamed.splice(0).forEach(queue);
    }
    await letGo();
    const asks = fresh.querySelector('[data-who]');
    const notice = decodeURIComponent(answer.headers.get('X-Notice') ?? '');
    if (waiting > 1 && !asks) {
      // What is wrong with a field is said where the field itself is not shown.
      const said = notice || page.querySelector('.fault')?.textContent;
      if (said) {
        say(said);
      }
      return;
    }
    const here = answer.headers.get('X-Here');
    if (here || answer.redirected) {
      history.replaceState(null, '', here ?? answer.url);
    }
    show(fresh, notice, at, {sent: press.form, change: Number(answer.headers.get('X-Change'))});
    asked = Boolean(asks);
  } catch (e) {
    // Not sent, or not heard: the form stays as it is, to be pressed again; it counts once.
    root.dataset.network = 'off';
    if (root.dataset.unsent) {
      hush(performance.now());
      say(root.dataset.unsent);
    }
  }
}

// Replaces the page's main, and the notices that the cook had not seen when pressing.
function show(fresh, notice, at, how) {
  hush(at);
  if (notice) {
    say(notice);
  }
  swap(fresh, how);
}

function hush(at) {
  document.querySelectorAll('.notice').forEach((old) => {
    if (Number(old.dataset.told || 0) <= at) {
      old.remove();
    }
  });
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
