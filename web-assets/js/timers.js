// Timers: counts them down, sounds while one rings, and asks for the page again when one is up. What runs and
// until when is the server's word; this keeps the seconds in between.
import {now, write} from './clock.js';

const SOUND_EVERY = 4000;
let asked = 0;
let sounded = 0;
let audio;

function left(millis) {
  const seconds = Math.max(0, Math.ceil(millis / 1000));
  if (seconds < 600) {
    return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
  }
  const minutes = Math.ceil(seconds / 60);
  const hours = Math.floor(minutes / 60);
  return hours ? `${hours} h ${String(minutes % 60).padStart(2, '0')}` : `${minutes} min`;
}

function tell() {
  const at = now();
  document.querySelectorAll('[data-count]').forEach((one) => {
    const millis = Number(one.dataset.count) - at;
    if (millis > 0) {
      write(one, left(millis));
    }
  });
  document.querySelectorAll('progress[data-since]').forEach((bar) => {
    bar.value = at - Number(bar.dataset.since);
  });
  const due = [...document.querySelectorAll('[data-rings]')].filter((one) => {
    const rings = Number(one.dataset.rings);
    return rings > 0 && rings <= at;
  });
  const last = Math.max(0, ...due.map((one) => Number(one.dataset.rings)));
  if (due.some((one) => !one.dataset.up) && last > asked) {
    // What rings has buttons: they come with the page.
    asked = last;
    document.dispatchEvent(new CustomEvent('stale'));
  }
  const lifts = document.querySelector('.lift .over');
  if ((due.length || lifts) && at - sounded >= SOUND_EVERY) {
    sounded = at;
    sound(due.length ? [660, 880] : [520, 520]);
  }
  const mute = document.querySelector('[data-mute]');
  if (mute) {
    mute.hidden = !due.length || !audio || audio.state === 'running';
  }
}

// A browser lets a page sound only after somebody has touched it.
function wake() {
  audio ??= window.AudioContext ? new AudioContext() : undefined;
  audio?.resume();
}

function sound(tones) {
  audio ??= window.AudioContext ? new AudioContext() : undefined;
  if (audio?.state !== 'running') {
    return;
  }
  tones.forEach((tone, i) => {
    const begin = audio.currentTime + i * 0.28;
    const voice = audio.createOscillator();
    const loud = audio.createGain();
    voice.frequency.value = tone;
    loud.gain.setValueAtTime(0.0001, begin);
    loud.gain.exponentialRampToValueAtTime(0.5, begin + 0.02);
    loud.gain.exponentialRampToValueAtTime(0.0001, begin + 0.25);
    voice.connect(loud).connect(audio.destination);
    voice.start(begin);
    voice.stop(begin + 0.26);
  });
  document.documentElement.dataset.sounded = String(Number(document.documentElement.dataset.sounded || 0) + 1);
}

addEventListener('pointerdown', wake, true);
addEventListener('keydown', wake, true);
document.addEventListener('fresh', tell);
setInterval(tell, 500);
tell();
