// Big keys for amounts and numbers: under a field marked data-keys, with the units it names. The first key writes
// over what was filled in before. Without scripts, and with a keyboard, the field is typed in as ever.
const DIGITS = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '.', '0', '⌫'];

function split(value) {
  const parts = /^\s*([\d.,]*)\s*(.*)$/.exec(value);
  return parts ? [parts[1], parts[2].trim()] : ['', ''];
}

function press(field, key) {
  let [number, unit] = split(field.value);
  const fresh = field.dataset.fresh === 'yes';
  if (key === '⌫') {
    number = fresh ? '' : number.slice(0, -1);
  } else if (/^[\d.]$/.test(key)) {
    const before = fresh ? '' : number;
    number = key === '.' && /[.,]/.test(before) ? before : before + key;
  } else {
    unit = key;
  }
  if (/^[\d.⌫]$/.test(key)) {
    field.dataset.fresh = 'no';
  }
  field.value = unit ? `${number} ${unit}` : number;
  field.dispatchEvent(new Event('input', {bubbles: true}));
}

function pad(field) {
  const keys = document.createElement('div');
  keys.className = 'keys';
  keys.setAttribute('role', 'group');
  const units = field.dataset.keys.split(' ').filter(Boolean);
  [...DIGITS.filter((key) => units.length || key !== '.'), ...units].forEach((key) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = key === '.' ? field.dataset.point || '.' : key;
    button.className = units.includes(key) ? 'unit' : key === '0' && !units.length ? 'digit wide' : 'digit';
    button.tabIndex = -1;
    // The field keeps the focus, so that the page stays as it is.
    button.addEventListener('pointerdown', (event) => event.preventDefault());
    button.addEventListener('click', () => {
      press(field, key);
      field.focus({preventScroll: true});
    });
    keys.append(button);
  });
  return keys;
}

function open(field, byTouch) {
  const owner = field.closest('label') || field;
  if (owner.nextElementSibling?.classList.contains('keys')) {
    return;
  }
  document.querySelectorAll('.keys').forEach((old) => old.remove());
  field.dataset.fresh = 'yes';
  if (byTouch) {
    field.inputMode = 'none';
  }
  owner.after(pad(field));
}

let touched = false;
addEventListener('pointerdown', (event) => {
  touched = event.pointerType !== 'mouse';
}, true);

document.addEventListener('focusin', (event) => {
  if (event.target.matches?.('input[data-keys]')) {
    open(event.target, touched);
  } else if (!event.target.closest?.('.keys')) {
    goOn();
  }
});

// Somebody has gone on to something else. What they press stays under the finger until it is pressed.
function goOn() {
  if (document.documentElement.dataset.pressed) {
    document.addEventListener('let-go', goOn, {once: true});
    return;
  }
  const keys = document.querySelector('.keys');
  if (keys && !keys.closest('form')?.contains(document.activeElement)) {
    keys.remove();
  }
}

function atOnce() {
  const field = document.querySelector('input[data-keys][autofocus]');
  if (field) {
    open(field, true);
  }
}

document.addEventListener('fresh', atOnce);
atOnce();

// Where several buttons stand and none of them is meant more than another, the form begins with one that cannot be
// pressed: Enter sends nothing there, and goes on to them.
addEventListener('keydown', (event) => {
  const form = event.key === 'Enter' && event.target.matches?.('input') && event.target.form;
  if (form && form.querySelector('button')?.disabled) {
    event.preventDefault();
    form.querySelector('button:enabled')?.focus();
  }
});
