// Sliders and lists, as the model offers them.
const rows = new Map();

function showControls(told) {
  if (told.all) {
    const focused = document.activeElement?.name;
    for (const row of rows.values()) row.row.remove();
    rows.clear();
    for (const one of told.all) rows.set(one.name, build(one));
    if (focused && rows.has(focused)) rows.get(focused).input.focus({preventScroll: true});
  }
  for (const one of told.all || told) rows.get(one.name).one = one;
}

// All of them, for what was refused stands where the reader put it and not where the model is.
function bringControls(moving) {
  for (const [name, held] of rows) if (!moving.has(name)) bring(held);
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

function bring(held) {
  const {input, one} = held;
  const place = one.options ? one.options.findIndex(([option]) => option === one.value) : -1;
  if (one.kind === 'switch') input.checked = one.value;
  else if (one.kind === 'choice') { if (input.selectedIndex !== place) input.selectedIndex = place; }
  else if (one.kind === 'stops') { if (Number(input.value) !== place) input.value = place; }
  else {
    // The further end first: between two ranges the value must find room.
    if (Number(input.max) < one.most) input.max = one.most;
    for (const [name, end] of [['min', one.least], ['step', one.step], ['max', one.most]]) mark(input, name, end);
    if (Number(input.value) !== one.value) input.value = one.value;
  }
  tell(held);
}

function tell({input, said, one}) {
  if (one.kind === 'stops') write(said, one.options[input.value]?.[1] ?? '');
  else if (one.kind === 'slider') write(said, Number(input.value).toFixed(one.digits));
  if (said.textContent) mark(input, 'aria-valuetext', said.textContent);
}
