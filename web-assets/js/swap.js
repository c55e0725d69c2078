// Puts a fresh main in place of the page's, and keeps what is the reader's own: the focus, what lies open, and
// what is typed or chosen and not sent. A notice stands before the main.
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

/**
 * Replaces the page's main.
 *
 * @param sent the form that was sent: what was typed there is not typed again, and what it lies in closes
 * @param change the number of the change that it shows, when that is known
 */
export function swap(fresh, {sent, change} = {}) {
  const focus = document.activeElement && document.activeElement.id;
  const open = [...document.querySelectorAll('main details[open][id]')].filter((one) => !sent || !one.contains(sent));
  const own = new Map(typed(sent).map((one) => [key(one), chooses(one) ? one.checked : one.value]));
  document.querySelector('main').replaceWith(document.adoptNode(fresh));
  const again = own.size ? controls(fresh).filter((one) => own.has(key(one))) : [];
  again.forEach((one) => {
    one[chooses(one) ? 'checked' : 'value'] = own.get(key(one));
    one.closest('details')?.setAttribute('open', '');
  });
  open.forEach((one) => document.getElementById(one.id)?.setAttribute('open', ''));
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
