// The print button of a label.
document.querySelector('[data-print]')?.addEventListener('click', () => window.print());
