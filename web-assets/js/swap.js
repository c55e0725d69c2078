// Makes the page's main a fresh one, and keeps what is the reader's own: the focus, what lies open, and what is typed
// or chosen and not sent. A notice stands before the main.
const BESIDE = new Set(['_csrf', 'sequence', 'shown', 'id']);

// Which control of which form it is, on this page and on the next: by where its form goes, by what the form says
// without being asked or by its buttons, and by its name.
function key(control) {
  const form = control.form;
  const said = [...form.querySelectorAll('input[type=hidden], button[name]')]
    .filter((one) => !BESIDE.has(one.name))
    .map((one) => `${one.name}=${one.value}`);
  const choice = chooses(control) ? control.value : '';
  return [form.getAttribute('action'), ...said, control.name, choice].join('\n');
}

function chooses(control) {
  return control.type === 'checkbox' || control.type === 'radio';
}

function differs(control) {
  if (chooses(control)) {
    return control.checked !== control.defaultChecked;
  }
  if (control.matches('select')) {
    const first = [...control.options].findIndex((one) => one.defaultSelected);
    return control.selectedIndex !== Math.max(0, first);
  }
  return control.value !== control.defaultValue;
}

function controls(main) {
  const all = main.querySelectorAll('form input:not([type=hidden], [type=password]), form select, form textarea');
  return [...all].filter((one) => one.name);
}

function typed(but) {
  const main = document.querySelector('main');
  return controls(main).filter((one) => one.form !== but && differs(one));
}

/** Whether something is typed or chosen that would be gone with the page. */
export function isTyped() {
  return typed().length > 0;
}

// ---- only what differs ----

// How far down the old page something is looked for that stands higher in the fresh one.
const AHEAD = 16;

/** Makes an element what a fresh one is. What is the same stays, so that it need not be laid out and drawn again. */
export function become(old, fresh) {
  attributes(old, fresh);
  let next = old.firstChild;
  let child = fresh.firstChild;
  while (child) {
    const after = child.nextSibling;
    const same = find(next, child);
    while (same && next !== same) {
      next = drop(next);
    }
    if (same) {
      next = same.nextSibling;
      if (child.nodeType !== Node.ELEMENT_NODE) {
        if (same.data !== child.data) {
          same.data = child.data;
        }
      } else if (!same.isEqualNode(child) || holdsTyped(same)) {
        become(same, child);
      }
    } else {
      old.insertBefore(document.adoptNode(child), next);
    }
    child = after;
  }
  while (next) {
    next = drop(next);
  }
  if (old.matches('input, select, textarea')) {
    take(old, fresh);
  }
}

function attributes(old, fresh) {
  for (const {name, value} of fresh.attributes) {
    if (old.getAttribute(name) !== value) {
      old.setAttribute(name, value);
    }
  }
  if (old.attributes.length > fresh.attributes.length) {
    [...old.attributes].filter(({name}) => !fresh.hasAttribute(name)).forEach(({name}) => old.removeAttribute(name));
  }
}

// What an element is on the page, whatever it says: a task's row is the row of that task.
function what(one) {
  const leads = one.getAttribute('href') ?? one.getAttribute('action') ?? one.firstElementChild?.getAttribute('href');
  return `${one.nodeName} ${one.id} ${leads ?? ''}`;
}

function find(from, child) {
  if (child.nodeType !== Node.ELEMENT_NODE) {
    return from?.nodeType === child.nodeType ? from : null;
  }
  const wanted = what(child);
  let one = from;
  for (let i = 0; one && i < AHEAD; i += 1) {
    if (one.nodeType === Node.ELEMENT_NODE && what(one) === wanted && canBecome(one, child)) {
      return one;
    }
    one = one.nextSibling;
  }
  return null;
}

// An undo bar goes with its own time, and is never made another.
function canBecome(old, fresh) {
  return !('after' in old.dataset) || old.isEqualNode(fresh);
}

// What is equal by its source may show something else that was typed there.
function holdsTyped(one) {
  return one.matches('input, select, textarea')
    || Boolean(one.querySelector('input:not([type=hidden]), select, textarea'));
}

function drop(node) {
  const next = node.nextSibling;
  node.remove();
  return next;
}

function take(old, fresh) {
  if (chooses(old)) {
    old.checked = fresh.checked;
  } else if (old.matches('select')) {
    old.selectedIndex = fresh.selectedIndex;
  } else if (old.value !== fresh.value) {
    old.value = fresh.value;
  }
}

// The task that is open on a wall; nothing on any other page.
function inHand() {
  return document.querySelector('main .hand input[name=task]')?.value;
}

// What was opened and has closed by what was sent there: it is left where what it changed can be seen above it.
function inSight(closed) {
  const top = closed?.getBoundingClientRect().top;
  if (top < window.innerHeight / 3 || top > window.innerHeight) {
    closed.scrollIntoView({block: 'end', behavior: 'instant'});
  }
}

/**
 * Makes the page's main the fresh one.
 *
 * @param sent the form that was sent: what was typed there is not typed again, and what it lies in closes, but for a
 *   fold, in which much more lies
 * @param change the number of the change that it shows, when that is known
 */
export function swap(fresh, {sent, change} = {}) {
  const hand = inHand();
  const closes = sent?.closest('details[id]:not(.fold)')?.id;
  const focus = document.activeElement && document.activeElement.id;
  const open = [...document.querySelectorAll('main details[open][id]')].filter((one) => one.matches('.fold') || !sent || !one.contains(sent));
  const own = new Map(typed(sent).map((one) => [key(one), chooses(one) ? one.checked : one.value]));
  const again = own.size ? controls(fresh).filter((one) => own.has(key(one))) : [];
  again.forEach((one) => {
    one[chooses(one) ? 'checked' : 'value'] = own.get(key(one));
    one.closest('details')?.setAttribute('open', '');
  });
  open.forEach((one) => fresh.querySelector(`#${CSS.escape(one.id)}`)?.setAttribute('open', ''));
  become(document.querySelector('main'), fresh);
  document.getElementById(focus || '')?.focus({preventScroll: true});
  if (sent && inHand() !== hand) {
    // Another task is in hand: its name, its allergens and the way back are seen before its keys.
    window.scrollTo({top: 0, behavior: 'instant'});
  } else if (closes) {
    inSight(document.getElementById(closes));
  }
  document.dispatchEvent(new CustomEvent('fresh', {detail: {change}}));
}

/** Says something before the main, with the moment at which it was said. */
export function say(words) {
  const notice = document.createElement('p');
  notice.className = 'notice';
  notice.setAttribute('role', 'alert');
  notice.textContent = words;
  notice.dataset.told = performance.now();
  document.querySelector('main').before(notice);
}
