// Counting by steps: a press adds to or takes from the number in its form, never below nothing.
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
  const thousand = unit === 'kg' ? 1000 : 1;
  const now = Number(typed[1].replace(',', '.')) + Number(button.dataset.step) / thousand;
  field.value = `${Number(Math.max(0, now).toFixed(3))} ${unit}`;
});

document.addEventListener('fresh', () => arm(document));
arm(document);
