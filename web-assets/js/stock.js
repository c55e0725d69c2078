// Counting by steps: a press adds to or takes from the number in its form, never below nothing.
const GRAMS = {kg: 1000, lb: 453.59237, oz: 28.349523125};

function arm(root) {
  root.querySelectorAll('[data-step]').forEach((button) => {
    button.hidden = false;
  });
}

document.addEventListener('click', (event) => {
  const button = event.target.closest('[data-step]');
  const field = button?.form?.elements.amount;
  const typed = field && /^\s*([\d.,]+)\s*(.*)$/.exec(field.value);
  if (!typed) {
    return;
  }
  const unit = typed[2].trim();
  const now = Number(typed[1].replace(',', '.')) + Number(button.dataset.step) / (GRAMS[unit] ?? 1);
  const shown = String(Number(Math.max(0, now).toFixed(3)));
  field.value = `${typed[1].includes(',') ? shown.replace('.', ',') : shown} ${unit}`;
});

document.addEventListener('fresh', () => arm(document));
arm(document);
