// Past the rated load: what happens, in its order, slowly and without a sound; it can be stopped.
const calm = matchMedia('(prefers-reduced-motion: reduce)');
const PACE = 330;  // ms from one picture to the next
const FELT = [['load', 'load on the hook'], ['times', ''], ['light', 'lightest '], ['lean', 'carrier leans'],
  ['radius', 'radius'], ['down', 'head has come down']];
let story = null, pictures = [], playing = null;

const open = () => !at('past').hidden;

function passed(told) {
  if (open()) shut();
  at('raise').classList.toggle('urgent', told.past);
  // Past the rating the study is made without being asked for.
  if (told.past) whenStill('past', 600);
  else clearTimeout(pauses.past);
}

at('raise').addEventListener('click', () => ask({do: 'past', reading: true, wanted: true}));
at('back').addEventListener('click', shut);

function shut() {
  stop();
  const focus = at('past').contains(document.activeElement);
  at('past').hidden = true;
  document.body.classList.remove('past');
  if (focus) at('raise').focus();
}

readings.past = (told, asked) => {
  if (told.trouble) { if (asked.wanted) at('trouble').textContent = told.trouble; return; }
  if (!asked.wanted && !told.ends) return;
  story = told;
  pictures = [];
  at('pasttitle').textContent = told.title;
  at('felt').replaceChildren(...FELT.map(([key, words]) => {
    const box = made('div');
    box.append(made('dt', {textContent: key === 'light' ? words + told.foot : words || 'of the rated load'}), made('dd'));
    box.dataset.felt = key;
    return box;
  }));
  at('order').replaceChildren(...told.order.map(one => {
    const row = made('li');
    row.dataset.kind = one.kind;
    row.append(made('b', {textContent: `${one.load}, ${one.times}: `}), one.words, made('span'));
    return row;
  }));
  at('verdict').replaceChildren(...told.said.map(words => made('p', {textContent: words})));
  at('moment').max = told.frames.length - 1;
  at('play').textContent = calm.matches ? 'Next step' : 'Play';
  document.body.classList.add('past');
  at('past').hidden = false;
  turnTo(asked.wanted ? 0 : told.rated);
  at(asked.wanted ? 'play' : 'back').focus({preventScroll: true});
  // It goes by itself where the load on the hook ends it, unless the reader's machine wants no motion.
  if (!calm.matches) play();
};

function turnTo(number) {
  at('moment').value = number;
  const felt = story.frames[number];
  at('moment').setAttribute('aria-valuetext', `${felt.load}, ${felt.times}`);
  for (const [key] of FELT) document.querySelector(`[data-felt="${key}"] dd`).textContent = felt[key];
  at('note').textContent = felt.note || '';
  at('past').dataset.shown = number;
  story.order.forEach((one, place) => {
    const row = at('order').children[place], happened = one.from !== null && number >= one.from;
    row.classList.toggle('happened', happened);
    row.lastChild.textContent = happened ? ' – has happened' : one.from === null && number >= story.rising ? ' – not come to' : '';
  });
  if (pictures[number]) at('pastview').innerHTML = pictures[number];
  fetchFrom(number);
}

// Pictures come one by one, the one that is looked at first and the next ones after it.
function fetchFrom(number) {
  if (wishes.some(one => one.do === 'frame') || busy?.asked.do === 'frame') return;
  const wanted = story.frames.findIndex((_, k) => k >= number && !pictures[k]);
  if (wanted >= 0 && wanted < number + 12) ask({do: 'frame', number: wanted, reading: true});
}

readings.frame = (picture, asked) => {
  if (!open()) return;
  pictures[asked.number] = picture;
  const number = Number(at('moment').value);
  if (asked.number === number) at('pastview').innerHTML = picture;
  setTimeout(() => { if (open()) fetchFrom(number); });
};

function play() {
  if (Number(at('moment').value) >= story.frames.length - 1) turnTo(0);
  at('play').textContent = 'Stop';
  playing = setInterval(() => {
    const number = Number(at('moment').value);
    if (!pictures[number + 1] && number + 1 < story.frames.length) return fetchFrom(number);
    if (number + 1 >= story.frames.length) return stop();
    turnTo(number + 1);
  }, PACE);
}

function stop() {
  clearInterval(playing);
  playing = null;
  at('play').textContent = calm.matches ? 'Next step' : 'Play';
}

// Without motion: from one event to the next.
function step() {
  const number = Number(at('moment').value), last = story.frames.length - 1;
  const places = [...story.order.map(one => one.from).filter(one => one !== null), story.rated, story.rising - 1, last];
  turnTo(Math.min(...places.filter(one => one > number), number >= last ? 0 : last));
}

at('play').addEventListener('click', () => calm.matches ? step() : playing ? stop() : play());
at('moment').addEventListener('input', () => { stop(); turnTo(Number(at('moment').value)); });
addEventListener('keydown', event => { if (event.key === 'Escape' && open()) shut(); });
