// Keeps the wall's clock, countdowns and drops, says whether the network is there, and lets the undo bar go.
import {now as serverNow, write} from './clock.js';

// By a clock of twelve hours: "16:05" is "4:05 pm".
function halfDay(time, am, pm) {
  const [hour, minute] = time.split(':');
  return (Number(hour) < 12 ? am : pm).replace('%', `${Number(hour) % 12 || 12}:${minute}`);
}

// When what is shown ends; 0 for what has no end, or has ended.
let ends = 0;

function tell() {
  const now = serverNow();
  if (ends && now >= ends) {
    ends = 0;
    document.dispatchEvent(new CustomEvent('stale'));
  }
  document.querySelectorAll('[data-clock]').forEach((clock) => {
    const {am, pm, zone} = clock.dataset;
    const time = new Intl.DateTimeFormat('en-GB', {
      hour: '2-digit', minute: '2-digit', hourCycle: 'h23', timeZone: zone,
    }).format(now);
    write(clock, am ? halfDay(time, am, pm) : time);
  });
  document.querySelectorAll('[data-until]').forEach((left) => {
    const minutes = Math.ceil((Number(left.dataset.until) - now) / 60000);
    if (minutes > 0) {
      const hours = Math.floor(minutes / 60);
      const rest = String(minutes % 60).padStart(hours ? 2 : 1, '0');
      write(left, hours ? `${hours} h ${rest} min` : `${rest} min`);
    }
  });
  document.querySelectorAll('[data-lift]').forEach((lift) => {
    const seconds = Math.round((Number(lift.dataset.lift) - now) / 1000);
    const whole = Math.abs(seconds);
    const shown = `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
    write(lift, seconds < 0 ? `+${shown}` : shown);
    lift.classList.toggle('over', seconds < 0);
  });
  const on = document.documentElement.dataset.network !== 'off' && navigator.onLine;
  document.querySelectorAll('.net').forEach((net) => {
    write(net, on ? net.dataset.on : net.dataset.off);
    net.classList.toggle('off', !on);
  });
}

function fresh() {
  const end = Number(document.querySelector('main[data-ends]')?.dataset.ends ?? 0);
  ends = end > serverNow() ? end : 0;
  document.querySelectorAll('[data-by]').forEach((button) => {
    button.hidden = false;
  });
  document.querySelectorAll('[data-after]').forEach((bar) => {
    setTimeout(() => over(bar), Number(bar.dataset.after) * 1000);
  });
  tell();
}

// Lets an undo bar go, unless it went with its page or somebody is at it.
function over(bar) {
  if (!bar.isConnected || bar.contains(document.activeElement)) {
    return;
  }
  if (document.documentElement.dataset.pressed) {
    document.addEventListener('let-go', () => over(bar), {once: true});
    return;
  }
  bar.remove();
  const task = new URLSearchParams(location.search).get('task');
  const kept = task ? `?task=${encodeURIComponent(task)}` : '';
  history.replaceState(null, '', location.pathname + kept);
}

// A press adds to or takes from the pieces in its form, never below one.
document.addEventListener('click', (event) => {
  const button = event.target.closest('[data-by]');
  const field = button?.form?.elements.pieces;
  if (field) {
    field.value = Math.max(1, (Number.parseInt(field.value, 10) || 0) + Number(button.dataset.by));
  }
});

document.addEventListener('fresh', fresh);
setInterval(tell, 1000);
fresh();
