// Sliders and lists, as the model offers them.
const rows = new Map();

function showControls(controls, moving) {
  const shape = JSON.stringify(controls.map(one => [one.name, one.kind, one.options, one.words]));
  if (at('controls').dataset.shape !== shape) {
    const focused = document.activeElement?.name;
    for (const row of rows.values()) row.row.remove();
    rows.clear();
    for (const one of controls) rows.set(one.name, build(one));
    at('controls').dataset.shape = shape;
    if (focused && rows.has(focused)) rows.get(focused).input.focus({preventScroll: true});
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
