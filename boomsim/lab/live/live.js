'use strict';
const at = name => document.getElementById(name);
const made = (tag, more) => Object.assign(document.createElement(tag), more);
const narrow = matchMedia('(max-width: 999px), (max-height: 499px)');
const layout = () => narrow.matches ? 'phone' : 'desk';
const wishes = [];
let worker, ready = false, busy = null, number = 0, shown = null;

// --- Asking: one question at a time; of a control that moves on, only its newest place is asked ---

function ask(asked) {
  const same = wishes.findIndex(one => one.do === 'move' && asked.do === 'move' && one.name === asked.name);
  if (same >= 0 && same === wishes.length - 1) wishes.pop();
  wishes.push(asked);
  next();
}

function next() {
  if (!ready || busy || !wishes.length) return;
  busy = {number: ++number, asked: wishes.shift()};
  worker.postMessage({number: busy.number, asked: JSON.stringify(busy.asked)});
}

function heard({data}) {
  if (data.fault) return failed(data.fault);
  if (data.step === 'python') return at('state').textContent = 'Python has started; the model is next.';
  if (data.step === 'numpy') return at('state').textContent = 'The model is almost ready.';
  if (data.step === 'ready') { ready = true; at('state').textContent = at('state').dataset.ready; }
  busy = null;
  show(JSON.parse(data.told));
  next();
}

function failed(words) {
  busy = null;
  at('trouble').textContent = ready ? words : `The model could not start in this browser: ${words}`;
  at('state').textContent = ready ? at('state').textContent : 'The model did not start; the picture is the first one.';
}

// --- Showing ---

function show(told) {
  // What is still to be asked will change the picture: its controls stay where the reader put them.
  const moving = new Set(wishes.map(one => one.name));
  showControls(told.controls, moving);
  at('numbers').replaceChildren(...told.numbers.flatMap(([key, words, value]) => {
    const box = made('div');
    box.append(made('dt', {textContent: words}), made('dd', {textContent: value}));
    box.dataset.number = key;
    return [box];
  }));
  at('headline').textContent = told.headline;
  if (told.remark) at('headline').append(made('strong', {textContent: ` ${told.remark}`}));
  at('trouble').textContent = told.trouble;
  at('stage').innerHTML = told.stage;
  at('below').innerHTML = told.below;
  document.body.dataset.layout = told.layout;
  document.body.dataset.asked = number;
  shown = told;
  if (ready && !wishes.length) history.replaceState(null, '', '#' + told.address);
}

const rows = new Map();

function showControls(controls, moving) {
  const shape = JSON.stringify(controls.map(one => [one.name, one.kind, one.options, one.words]));
  if (at('controls').dataset.shape !== shape) {
    for (const row of rows.values()) row.row.remove();
    rows.clear();
    for (const one of controls) rows.set(one.name, build(one));
    at('controls').dataset.shape = shape;
  }
  for (const one of controls) if (!moving.has(one.name)) bring(one);
}

function build(one) {
  const row = made('label', {className: one.kind}), words = made('span', {textContent: one.words});
  const said = made('output'), input = made(one.kind === 'choice' ? 'select' : 'input');
  input.name = one.name;
  if (one.kind === 'choice') input.append(...one.options.map(([, text]) => made('option', {textContent: text})));
  else input.type = one.kind === 'switch' ? 'checkbox' : 'range';
  if (one.kind === 'stops') Object.assign(input, {min: 0, max: one.options.length - 1, step: 1});
  const held = {row, input, said, one};
  input.addEventListener(one.kind === 'choice' || one.kind === 'switch' ? 'change' : 'input', () => {
    tell(held);
    ask({do: 'move', name: one.name, value: value(held)});
  });
  row.append(words, ...(one.kind === 'slider' || one.kind === 'stops' ? [said] : []), input);
  document.querySelector(`[data-group="${one.group}"]`).append(row);
  return held;
}

function value({input, one}) {
  if (one.kind === 'switch') return input.checked;
  if (one.kind === 'choice') return one.options[input.selectedIndex][0];
  return one.kind === 'stops' ? one.options[input.value][0] : Number(input.value);
}

function bring(one) {
  const held = rows.get(one.name), {input} = held;
  held.one = one;
  const place = one.options ? one.options.findIndex(([option]) => option === one.value) : -1;
  if (one.kind === 'switch') input.checked = one.value;
  else if (one.kind === 'choice') input.selectedIndex = place;
  else if (one.kind === 'stops') input.value = place;
  else {
    Object.assign(input, {max: Math.max(one.most, Number(input.max)), min: one.least, step: one.step});
    input.max = one.most;
    input.value = one.value;
  }
  tell(held);
}

function tell({input, said, one}) {
  if (one.kind === 'stops') said.textContent = one.options[input.value]?.[1] ?? '';
  else if (one.kind === 'slider') said.textContent = Number(input.value).toFixed(one.digits);
  if (said.textContent) input.setAttribute('aria-valuetext', said.textContent);
}

// --- Starting ---

async function start() {
  const begin = {...first.begin, address: location.hash.slice(1), layout: layout()};
  const parts = {};
  for (const name of ['code', 'wasm', 'stdlib', 'site']) {
    parts[name] = at(`part-${name}`).textContent;
    at(`part-${name}`).remove();
  }
  const letters = atob(parts.code), bytes = Uint8Array.from(letters, letter => letter.charCodeAt(0));
  const code = await new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'))).text();
  delete parts.code;
  const blob = new Blob([code, '\n', at('worker').textContent], {type: 'text/javascript'});
  worker = new Worker(URL.createObjectURL(blob));
  worker.onmessage = heard;
  worker.onerror = fault => failed(fault.message || 'its worker did not start');
  worker.postMessage({parts, begin: JSON.stringify(begin)});
}

const first = JSON.parse(at('first').textContent);
at('state').dataset.ready = first.ready;
if (!location.hash) show(first[layout()]);
narrow.addEventListener('change', () => ask({do: 'look', layout: layout()}));
at('undo').addEventListener('click', () => ask({do: 'undo'}));
at('reset').addEventListener('click', () => ask({do: 'reset'}));
at('link').addEventListener('click', async () => {
  await navigator.clipboard.writeText(location.href);
  at('trouble').textContent = 'The link is copied; it opens this scene.';
});
at('file').addEventListener('change', async () => {
  const file = at('file').files[0];
  if (file) ask({do: 'open', name: file.name, text: await file.text()});
  at('file').value = '';
});
addEventListener('hashchange', () => ask({do: 'go', address: location.hash.slice(1)}));
start().catch(fault => failed(fault.message));
