'use strict';
// Asking the model in its worker: one question at a time; of what moves on, only its newest place.
const at = name => document.getElementById(name);
const made = (tag, more) => Object.assign(document.createElement(tag), more);
const write = (one, words) => { if (one.textContent !== words) one.textContent = words; };
const mark = (one, name, value) => { if (one.getAttribute(name) !== String(value)) one.setAttribute(name, value); };
const wishes = [];
let worker, ready = false, busy = null, number = 0, shown = null;

const alike = (one, other) => one.do === other.do && one.name === other.name && one.grip === other.grip
  && ['move', 'drag', 'look'].includes(one.do);

function ask(asked) {
  // A reading belongs to the scene that it was asked of.
  if (!asked.reading) for (let k = wishes.length - 1; k >= 0; k--) if (wishes[k].reading) wishes.splice(k, 1);
  if (wishes.length && alike(wishes.at(-1), asked)) wishes.pop();
  wishes.push(asked);
  next();
}

function next() {
  if (!ready || busy || !wishes.length) return;
  busy = {number: ++number, asked: wishes.shift()};
  worker.postMessage({number: busy.number, reading: Boolean(busy.asked.reading), asked: JSON.stringify(busy.asked)});
}

const readings = {}, pauses = {};

// What takes longer than a picture is asked for when nothing moves any more.
function whenStill(what, delay) {
  clearTimeout(pauses[what]);
  pauses[what] = setTimeout(() => {
    if (!ready || busy || wishes.length || held) whenStill(what, 120);
    else ask({do: what, reading: true});
  }, delay);
}

function heard({data}) {
  if (data.fault) return failed(data.fault);
  if (data.rest) return showRest(data.rest, data.number);
  if (data.step === 'python') return at('state').textContent = 'Python has started; the model is next.';
  if (data.step === 'numpy') return at('state').textContent = 'The model is almost ready.';
  if (data.step === 'ready') { ready = true; at('state').textContent = at('state').dataset.ready; at('state').classList.add('ready'); }
  const asked = busy?.asked;
  busy = null;
  if (asked?.reading) readings[asked.do](data.told[asked.do], asked);
  else show(data.told);
  next();
}

function failed(words) {
  busy = null;
  at('trouble').textContent = ready ? words : `The model could not start in this browser: ${words}`;
  at('state').textContent = ready ? at('state').textContent : 'The model did not start; the picture is the first one.';
}
