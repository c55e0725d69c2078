// What wet hands do: a towel dragged across presses nothing, what cannot be taken back is held for half a second,
// and the screen can be locked for wiping.
const HELD = 500;
const FAR = 16;
const root = document.documentElement;

// ---- a towel ----

const down = new Map();
let dragged = false;

addEventListener('pointerdown', (event) => {
  // The first finger of a press: whatever else was down has gone unheard, out of the window or into a dialog.
  if (event.isPrimary) {
    down.clear();
    dragged = false;
  }
  down.set(event.pointerId, [event.clientX, event.clientY]);
  // Two fingers at once, or a flat hand, are no finger.
  dragged = dragged || down.size > 1 || event.width > 90 || event.height > 90;
}, true);

addEventListener('pointermove', (event) => {
  const from = down.get(event.pointerId);
  if (from && Math.hypot(event.clientX - from[0], event.clientY - from[1]) > FAR) {
    dragged = true;
  }
}, true);

for (const end of ['pointerup', 'pointercancel']) {
  addEventListener(end, (event) => setTimeout(() => down.delete(event.pointerId), 0), true);
}

addEventListener('click', (event) => {
  const typed = event.target.closest?.('input, select, textarea');
  if (event.detail && dragged && !typed) {
    event.preventDefault();
    event.stopImmediatePropagation();
  }
}, true);

// ---- held ----

let holding = null;
let timer = 0;
let slid = 0;
let again = null;

function hold(button) {
  clearTimeout(slid);
  letGo();
  holding = button;
  button.classList.add('holding');
  timer = setTimeout(() => {
    button.classList.add('held');
  }, HELD);
}

function letGo() {
  clearTimeout(timer);
  const held = holding?.classList.contains('held');
  holding?.classList.remove('holding', 'held');
  holding = null;
  return held;
}

const holdable = (event) => event.target.closest?.('[data-hold]');

addEventListener('pointerdown', (event) => {
  const button = holdable(event);
  if (button) {
    hold(button);
  }
}, true);

addEventListener('pointercancel', letGo, true);

// Slid off, or dragged: no click comes.
addEventListener('pointerup', () => {
  clearTimeout(slid);
  slid = setTimeout(letGo, 100);
}, true);

addEventListener('keydown', (event) => {
  const button = holdable(event);
  if (button && (event.key === 'Enter' || event.key === ' ')) {
    event.preventDefault();
    if (!event.repeat) {
      hold(button);
    }
  }
}, true);

addEventListener('keyup', (event) => {
  const button = holdable(event);
  if (button && (event.key === 'Enter' || event.key === ' ')) {
    event.preventDefault();
    if (letGo()) {
      go(button);
    } else {
      tellHow(button);
    }
  }
}, true);

addEventListener('click', (event) => {
  const button = holdable(event);
  if (!button || button.dataset.sure) {
    return;
  }
  const byPointer = event.detail > 0;
  if (byPointer ? letGo() : again === button) {
    again = null;
    return;
  }
  event.preventDefault();
  event.stopImmediatePropagation();
  if (!byPointer) {
    // Pressed by a voice or a switch, which cannot hold: asked once more.
    again = button;
    setTimeout(() => { again = null; }, 5000);
  }
  tellHow(button);
}, true);

function go(button) {
  button.dataset.sure = 'yes';
  button.click();
  delete button.dataset.sure;
}

function tellHow(button) {
  button.classList.add('how');
  button.setAttribute('data-how', root.dataset.how || '');
  setTimeout(() => button.classList.remove('how'), 2500);
  const said = document.querySelector('[data-said]');
  if (said) {
    said.textContent = root.dataset.how || '';
  }
}

// ---- wiping ----

const UNLOCK = 800;
const LONGEST = 90000;

document.addEventListener('click', (event) => {
  if (event.target.closest('[data-wipe]')) {
    lock();
  }
});

function lock() {
  const wiped = document.querySelector('dialog.wiped');
  if (!wiped || wiped.open) {
    return;
  }
  wiped.showModal();
  root.dataset.wiped = 'yes';
  const key = wiped.querySelector('button');
  let wait = 0;
  const end = () => {
    clearTimeout(wait);
    clearTimeout(longest);
    wiped.close();
    delete root.dataset.wiped;
  };
  const longest = setTimeout(end, LONGEST);
  const press = (event) => {
    if (event.type === 'keydown' && event.key !== 'Enter' && event.key !== ' ') {
      return;
    }
    event.preventDefault();
    if (!event.repeat) {
      key.classList.add('holding');
      wait = setTimeout(end, UNLOCK);
    }
  };
  const off = () => {
    key.classList.remove('holding');
    clearTimeout(wait);
  };
  key.onpointerdown = press;
  key.onkeydown = press;
  for (const kind of ['pointerup', 'pointerleave', 'pointercancel', 'keyup', 'blur']) {
    key[`on${kind}`] = off;
  }
  wiped.oncancel = (event) => event.preventDefault();
}

function arm() {
  document.querySelectorAll('[data-wipe]').forEach((button) => {
    button.hidden = false;
  });
}

document.addEventListener('fresh', arm);
arm();

// ---- awake ----

async function stayAwake() {
  if (document.visibilityState === 'visible') {
    try {
      await navigator.wakeLock?.request('screen');
    } catch (e) {
      // The tablet does not let us: its own settings keep it awake.
    }
  }
}

document.addEventListener('visibilitychange', stayAwake);
stayAwake();
