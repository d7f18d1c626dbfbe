// What can be taken hold of in the picture: pointers, fingers and the arrow keys.
const grips = new Map();
const KEYS = {ArrowUp: 'up', ArrowDown: 'down', ArrowLeft: 'left', ArrowRight: 'right', PageUp: 'up', PageDown: 'down'};
const FEW = 6;  // so many pixels decide which way the load goes
let held = null;

function showGrips(told) {
  const names = told.grips.map(one => one.name);
  for (const [name, grip] of grips) if (!names.includes(name)) { grip.remove(); grips.delete(name); }
  // The Tab key goes from the tip along the sections to the load, whatever was made first.
  if (names.some(name => !grips.has(name))) at('grips').append(...names.map(name => grips.get(name) || newGrip(name)));
  for (const one of told.grips) {
    const grip = grips.get(one.name);
    grip.told = one;
    grip.style.left = `${100 * one.place[0] / told.size[0]}%`;
    grip.style.top = `${100 * one.place[1] / told.size[1]}%`;
    write(grip.firstChild, one.mark || '');
    if (grip.title !== one.words) grip.title = one.words;
    mark(grip, 'aria-label', one.words);
    mark(grip, 'aria-valuetext', one.says);
    mark(grip, 'aria-valuemin', one.least);
    mark(grip, 'aria-valuemax', one.most);
    mark(grip, 'aria-valuenow', one.value);
  }
}

function sayHeld() {
  if (held || grips.has(document.activeElement?.dataset.grip)) say(held?.name || document.activeElement.dataset.grip);
}

function say(name) {
  const {words, says} = grips.get(name).told;
  at('said').textContent = `${words}. Now ${says}.`;
}

function newGrip(name) {
  const grip = made('div', {className: 'grip', tabIndex: 0});
  grip.dataset.grip = name;
  grip.setAttribute('role', 'slider');
  grip.append(made('i'));
  grip.addEventListener('keydown', event => {
    if (!KEYS[event.key] || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    ask({do: 'nudge', grip: name, key: KEYS[event.key], large: event.shiftKey || event.key.startsWith('Page')});
  });
  grip.addEventListener('focus', () => say(name));
  grip.addEventListener('blur', () => { at('said').textContent = ''; });
  grip.addEventListener('pointerdown', take);
  grip.addEventListener('pointermove', carry);
  for (const end of ['pointerup', 'pointercancel']) grip.addEventListener(end, drop);
  grips.set(name, grip);
  return grip;
}

// From the screen to the picture's own measure, and to metres in the frame that the drag began with.
function seenAt(event) {
  const box = at('stage').getBoundingClientRect(), many = held.size[0] / box.width;
  return [(event.clientX - box.left) * many, (event.clientY - box.top) * many];
}

function take(event) {
  if (!ready || event.button) return;
  event.preventDefault();
  const grip = event.currentTarget, {frame, size} = shown;
  grip.focus({preventScroll: true});
  grip.setPointerCapture(event.pointerId);
  held = {name: grip.dataset.grip, frame, size, start: grip.told};
  const [x, y] = seenAt(event);
  Object.assign(held, {x, y, aside: [grip.told.place[0] - x, grip.told.place[1] - y], way: null});
  grip.classList.add('held');
}

function carry(event) {
  if (held?.name !== event.currentTarget.dataset.grip) return;
  const [x, y] = seenAt(event), [left, ground, scale] = held.frame, asked = {do: 'drag', grip: held.name, frame: held.frame};
  if (held.name === 'load') {
    const along = Math.abs(x - held.x), up = Math.abs(y - held.y);
    if (!held.way && Math.max(along, up) < FEW) return;
    held.way ||= along > up ? 'along' : 'up';
    if (held.way === 'up') return ask({...asked, load: Math.max(0, held.start.value + (held.y - y) * held.start.pixel)});
  }
  const [px, py] = held.start.place;
  ask({...asked, place: [(px + x - held.x - left) / scale, (ground - py - y + held.y) / scale]});
}

function drop(event) {
  if (held?.name !== event.currentTarget.dataset.grip) return;
  event.currentTarget.classList.remove('held');
  held = null;
  ask({do: 'drop'});
}
