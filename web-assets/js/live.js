// Fetches this page's main again when the kitchen has changed. One tab of the browser holds the event
// stream and tells the others: a browser opens only a few connections to a server.
const root = document.documentElement;
const channel = new BroadcastChannel(`halfgram ${root.dataset.live}`);
let seen = Number(root.dataset.change || 0);
let wanted = seen;
let busy = false;
let stale = false;

channel.onmessage = (message) => heard(message.data);

if (root.dataset.live) {
  const lead = () => new Promise(() => {
    const stream = new EventSource(root.dataset.live);
    stream.addEventListener('change', (event) => {
      channel.postMessage(Number(event.data));
      heard(Number(event.data));
    });
    stream.onopen = () => network(true);
    stream.onerror = () => network(false);
  });
  if (navigator.locks) {
    navigator.locks.request(`halfgram ${root.dataset.live}`, lead);
  } else {
    lead();
  }
}

function network(on) {
  root.dataset.network = on ? 'on' : 'off';
}

function heard(number) {
  wanted = Math.max(wanted, number);
  refresh();
}

// Somebody presses or types, or a form is on its way: what is under the fingers is not swapped.
function inHand() {
  if (root.dataset.sending || root.dataset.pressed || root.dataset.wiped) {
    return true;
  }
  const active = document.activeElement;
  const typing = active && active.closest('main') && active.matches('input, select, textarea');
  return Boolean(typing || document.querySelector('main[data-keep], main [data-keep]'));
}

async function refresh() {
  if (busy || (wanted <= seen && !stale) || inHand()) {
    return;
  }
  busy = true;
  stale = false;
  const number = wanted;
  const here = location.href;
  try {
    const answer = await fetch(here, {headers: {'X-Part': 'main'}});
    if (answer.status === 401 || answer.status === 403) {
      // Signed out, or sent away: the whole page says so, and lets in again.
      location.reload();
    } else if (answer.ok) {
      const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
      const fresh = page.querySelector('main');
      // A form may have been sent meanwhile, or a finger be down: then this is no longer the page to show.
      if (fresh && !inHand() && location.href === here) {
        swap(fresh);
        seen = number;
      }
    }
  } finally {
    busy = false;
  }
}

function swap(fresh) {
  const focus = document.activeElement && document.activeElement.id;
  const open = [...document.querySelectorAll('main details[open][id]')].map((one) => one.id);
  document.querySelector('main').replaceWith(document.adoptNode(fresh));
  open.forEach((id) => document.getElementById(id)?.setAttribute('open', ''));
  document.getElementById(focus || '')?.focus({preventScroll: true});
  document.dispatchEvent(new CustomEvent('fresh'));
}

// Time has passed that changes what the page says.
document.addEventListener('stale', () => {
  stale = true;
  refresh();
});
document.addEventListener('let-go', refresh);
document.addEventListener('fresh', (event) => {
  // What an answer to our own press shows need not be asked for again.
  seen = Math.max(seen, event.detail?.change ?? 0);
  setTimeout(refresh, 50);
});
document.addEventListener('focusout', () => setTimeout(refresh, 250));
document.addEventListener('visibilitychange', refresh);
