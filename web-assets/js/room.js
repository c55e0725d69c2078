// What stands still at the head and at the foot of the wall while the page goes by beneath it, and what the hand needs next:
// it comes into sight between them by itself, and stays there until somebody scrolls away from it. Nothing moves under a
// finger that is down: its press would fall beside the key.
const root = document.documentElement;
// The first of them that is there.
const NEXT = [':is(.is-problem, .is-failed) > .problem', '.at-gate:has(.fault)', '.at-baths .lift',
  '.at-baths .drop > button', '.weigh .now', '.at-gate'];
const CROWN = '.wall > :is(.top, .calls, .said, .changed)';
const bars = new ResizeObserver(stand);
let follows;
let put = 0;
let task = '';

const all = (selector) => [...document.querySelectorAll(selector)];
const highest = (some) => Math.max(0, ...some
  .filter((one) => getComputedStyle(one).position === 'sticky').map((one) => one.offsetHeight));

// The bar of what can be done stands above the timers, the name of what is in hand below what is told.
function stand() {
  root.style.setProperty('--crown', `${highest(all(CROWN))}px`);
  root.style.setProperty('--named', `${highest(all('.named'))}px`);
  root.style.setProperty('--foot', `${highest(all('.timers'))}px`);
  follow();
}

// How far the page has to go for it to be seen whole, or from its beginning.
function away() {
  const next = NEXT.map((one) => document.querySelector(`.work ${one}`)).find((one) => one);
  if (!next || document.querySelector('.acts :is(details[open], .keys)')) {
    return 0;
  }
  const {top, bottom} = next.getBoundingClientRect();
  const from = highest(all(CROWN)) + highest(all('.named'));
  const to = innerHeight - highest(all('.timers')) - highest(all('.acts'));
  return top < from ? top - from : Math.max(0, Math.min(bottom - to, top - from));
}

function follow() {
  if (follows && !root.dataset.pressed) {
    scrollBy({top: away(), behavior: 'instant'});
    put = scrollY;
  }
}

// Where we put the page the browser must not hold on to what it shows: its move would look like somebody's.
function heed(is) {
  follows = is;
  root.style.setProperty('overflow-anchor', is ? 'none' : 'auto');
}

function fresh() {
  bars.disconnect();
  all(`${CROWN}, .named, .acts, .timers`).forEach((one) => bars.observe(one));
  const hand = document.querySelector('.hand input[name=task]')?.value;
  heed(follows || hand !== task);
  task = hand;
  stand();
}

// Judged when the bars have grown or shrunk that the same moment brought; where we put the page nobody has scrolled it.
addEventListener('scroll', () => setTimeout(() => {
  heed(Math.abs(scrollY - put) < 2 || Math.abs(away()) < 2);
}));
document.addEventListener('fresh', fresh);
document.addEventListener('let-go', follow);
// Letters that come late have another height; ready may have been before any were asked for.
document.fonts.ready.then(stand);
document.fonts.addEventListener('loadingdone', stand);
heed(true);
fresh();
