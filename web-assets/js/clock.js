// The server's clock: what the page said when it came, and what has passed here since.
let base = 0;
let arrived = performance.now();

function read() {
  const clock = document.querySelector('[data-clock]');
  if (clock) {
    base = Number(clock.dataset.clock);
    arrived = performance.now();
  }
}

export function now() {
  return base ? base + performance.now() - arrived : Date.now();
}

document.addEventListener('fresh', read);
read();
