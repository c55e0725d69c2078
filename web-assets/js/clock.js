// The server's clock: what the page said when it came, and what has passed here since. One of the two clocks here
// may stand while the device sleeps.
let base = 0;
let arrived = performance.now();
let date = Date.now();

function read() {
  const clock = document.querySelector('[data-clock]');
  if (clock) {
    base = Number(clock.dataset.clock);
    arrived = performance.now();
    date = Date.now();
  }
}

export function now() {
  return base ? base + Math.max(performance.now() - arrived, Date.now() - date) : Date.now();
}

/** Writes text into an element, unless it stands there: what is written anew is laid out anew. */
export function write(element, text) {
  if (element.textContent !== text) {
    element.textContent = text;
  }
}

document.addEventListener('fresh', read);
read();
