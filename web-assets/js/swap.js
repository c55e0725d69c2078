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
const AHEAD = 12;

// Makes an element what a fresh one is. What is the same stays, so that it need not be laid out and drawn again.
function become(old, fresh) {
  for (const {name} of [...old.attributes]) {
    if (!fresh.hasAttribute(name)) {
      old.removeAttribute(name);
    }
  }
  for (const {name, value} of fresh.attributes) {
    if (old.getAttribute(name) !== value) {
      old.setAttribute(name, value);
    }
  }
  let next = old.firstChild;
  for (const child of [...fresh.childNodes]) {
    const same = find(next, child);
    while (same && next !== same) {
      next = drop(next);
    }
    if (same) {
      next = same.nextSibling;
    } else if (next && canBecome(next, child)) {
      const kept = next;
      next = next.nextSibling;
      if (child.nodeType === Node.ELEMENT_NODE) {
        become(kept, child);
      } else {
        kept.data = child.data;
      }
    } else {
      old.insertBefore(document.adoptNode(child), next);
    }
  }
  while (next) {
    next = drop(next);
  }
  if (old.matches('input, select, textarea')) {
    take(old, fresh);
  }
}

function find(from, child) {
  const ahead = child.nodeType === Node.ELEMENT_NODE ? AHEAD : 1;
  let one = from;
  for (let i = 0; one && i < ahead; i += 1) {
    if (one.isEqualNode(child) && !holdsTyped(one)) {
      return one;
    }
    one = one.nextSibling;
  }
  return null;
}

// What is equal by its source may show something else that was typed there.
function holdsTyped(one) {
  return one.nodeType === Node.ELEMENT_NODE
    && (one.matches('input, select, textarea') || Boolean(one.querySelector('input:not([type=hidden]), select, textarea')));
}

// An undo bar goes with its own time, and is never made another.
function canBecome(old, fresh) {
  return old.nodeName === fresh.nodeName && old.nodeType === fresh.nodeType && old.id === fresh.id
    && !(old.dataset && 'after' in old.dataset);
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

/**
 * Makes the page's main the fresh one.
 *
 * @param sent the form that was sent: what was typed there is not typed again, and what it lies in closes
 * @param change the number of the change that it shows, when that is known
 */
export function swap(fresh, {sent, change} = {}) {
  const focus = document.activeElement && document.activeElement.id;
  const open = [...document.querySelectorAll('main details[open][id]')].filter((one) => !sent || !one.contains(sent));
  const own = new Map(typed(sent).map((one) => [key(one), chooses(one) ? one.checked : one.value]));
  const again = own.size ? controls(fresh).filter((one) => own.has(key(one))) : [];
  again.forEach((one) => {
    one[chooses(one) ? 'checked' : 'value'] = own.get(key(one));
    one.closest('details')?.setAttribute('open', '');
  });
  open.forEach((one) => fresh.querySelector(`#${CSS.escape(one.id)}`)?.setAttribute('open', ''));
  become(document.querySelector('main'), fresh);
  document.getElementById(focus || '')?.focus({preventScroll: true});
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
