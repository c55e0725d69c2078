// Fetches this page's main again when the kitchen has changed, and when the page has slept. One tab of the browser
// holds the event stream and tells the others: a browser opens only a few connections to a server.
import {isTyped, say, swap} from './swap.js';

const root = document.documentElement;
const channel = new BroadcastChannel(`halfgram ${root.dataset.live}`);

// The server says something every 15 s: who hears nothing for longer has a stream that is dead and does not know.
const SILENT = 40000;
const AGAIN = 3000;
// What lasts longer is on its way no more.
const LONGEST = 30000;
const ASLEEP = 10000;

let seen = Number(root.dataset.change || 0);
let wanted = seen;
let busy = false;
let stale = false;
let away = false;
let soon = 0;

channel.onmessage = (message) => (message.data === 'away' ? sentAway() : heard(message.data));

// ---- the stream ----

let leads = false;
let stream;
let spoke = Date.now();
let reopening = 0;

if (root.dataset.live) {
  const lead = () => new Promise(() => {
    leads = true;
    connect();
  });
  if (navigator.locks) {
    navigator.locks.request(`halfgram ${root.dataset.live}`, lead);
  } else {
    lead();
  }
}

function connect() {
  clearTimeout(reopening);
  stream?.close();
  if (isOver()) {
    return;
  }
  spoke = Date.now();
  stream = new EventSource(root.dataset.live);
  stream.addEventListener('change', (event) => {
    spoke = Date.now();
    channel.postMessage(Number(event.data));
    heard(Number(event.data));
  });
  stream.addEventListener('here', () => {
    spoke = Date.now();
  });
  // Whoever looks here may not any more, or is somebody else now: the page knows which.
  stream.addEventListener('gone', () => {
    channel.postMessage('away');
    sentAway();
    reconnect(AGAIN);
  });
  stream.onopen = () => {
    network(true);
    refresh();
  };
  stream.onerror = () => {
    network(false);
    if (stream.readyState === EventSource.CLOSED) {
      // Turned away, by a proxy whose server is down or by the server itself: a browser does not say which, and
      // leaves it at that.
      sentAway();
      reconnect(AGAIN);
    }
  };
}

function reconnect(after) {
  clearTimeout(reopening);
  stream.close();
  reopening = setTimeout(connect, after);
}

function network(on) {
  root.dataset.network = on ? 'on' : 'off';
}

function heard(number) {
  wanted = Math.max(wanted, number);
  refresh();
}

// ---- the page ----

// Somebody presses or types, or a form is on its way: what is under the fingers is not swapped.
function inHand() {
  if (isPressed() || root.dataset.wiped) {
    return true;
  }
  const active = document.activeElement;
  const typing = active && active.closest('main') && active.matches('input, select, textarea');
  return Boolean(typing || document.querySelector('main[data-keep], main [data-keep]'));
}

// The page says already that nobody may look here any more.
function isOver() {
  return Boolean(document.querySelector('main[data-over]'));
}

function isPressed() {
  return Boolean(root.dataset.sending || root.dataset.pressed);
}

async function refresh() {
  if (busy || isOver() || (wanted <= seen && !stale) || (away ? isPressed() : inHand())) {
    return;
  }
  // Who asks only because something has changed may be shown what others see who ask for that, too.
  const headers = stale || away ? {'X-Part': 'main'} : {'X-Part': 'main', 'X-Told': wanted};
  busy = true;
  stale = false;
  const number = wanted;
  const here = location.href;
  try {
    const answer = await fetch(here, {headers, signal: AbortSignal.timeout(LONGEST)});
    const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
    network(true);
    if (answer.status === 401 || answer.status === 403) {
      goAway(page);
    } else if (answer.ok) {
      away = false;
      const fresh = page.querySelector('main');
      // A form may have been sent meanwhile, or a finger be down: then this is no longer the page to show.
      if (fresh && !inHand() && location.href === here) {
        seen = number;
        swap(fresh);
      } else {
        stale = true;
      }
    } else if (answer.status >= 500) {
      missed();
    }
  } catch (e) {
    // No network, or a bad one.
    network(false);
    missed();
  } finally {
    busy = false;
  }
}

function missed() {
  stale = true;
  clearTimeout(soon);
  soon = setTimeout(refresh, AGAIN);
}

// The stream has ended, perhaps because of who looks: asked even where a page waits for an answer of its own.
function sentAway() {
  stale = true;
  away = true;
  refresh();
}

// Signed out, or sent away: the whole page says so, and lets in again. What is typed is not thrown away for that:
// it can still be sent, and is kept.
function goAway(page) {
  if (isPressed() || isOver()) {
    missed();
  } else if (!isTyped()) {
    location.reload();
  } else if (!root.dataset.away) {
    root.dataset.away = 'yes';
    const why = page.querySelector('.verdict')?.textContent ?? '';
    say(`${why} ${root.dataset.typed ?? ''}`.trim());
  }
}

// Time has passed that changes what the page says.
document.addEventListener('stale', () => {
  stale = true;
  refresh();
});
document.addEventListener('let-go', refresh);
document.addEventListener('fresh', (event) => {
  drawn = Date.now();
  // What an answer to our own press shows need not be asked for again.
  seen = Math.max(seen, event.detail?.change ?? 0);
  setTimeout(refresh, 50);
});
document.addEventListener('focusout', () => setTimeout(refresh, 250));

// ---- asleep ----

// The device has slept, or the page was put away: what it shows is of then, and its stream may be dead.
function wake() {
  if (leads) {
    connect();
  }
  stale = true;
  refresh();
}

let hidden = 0;
document.addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'hidden') {
    hidden = Date.now();
  } else if (Date.now() - hidden > ASLEEP) {
    wake();
  } else {
    refresh();
  }
});
document.addEventListener('resume', wake);
addEventListener('online', wake);
addEventListener('pageshow', (event) => event.persisted && wake());

// What a page says of now grows old though nothing changes: what is late, what is called soon, another day.
const passes = Number(root.dataset.passes || 0) * 1000;
let drawn = Date.now();
let ticked = Date.now();
setInterval(() => {
  const slept = Date.now() - ticked;
  ticked = Date.now();
  if (document.visibilityState !== 'visible') {
    return;
  }
  if (slept > ASLEEP) {
    wake();
  } else if (leads && Date.now() - spoke > SILENT) {
    network(false);
    connect();
  }
  if (passes && Date.now() - drawn > passes) {
    drawn = Date.now();
    stale = true;
    refresh();
  }
}, 1000);

// ---- what the address names ----

// Browsers open the fold around it, but not at every reload.
function unfold() {
  const named = document.getElementById(location.hash.slice(1));
  const fold = named?.closest('details:not([open])');
  if (fold) {
    fold.open = true;
    named.scrollIntoView({behavior: 'instant'});
  }
}

addEventListener('hashchange', unfold);
unfold();
