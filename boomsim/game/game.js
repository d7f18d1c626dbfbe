'use strict';
const data = JSON.parse(document.getElementById('data').textContent);
const at = name => document.getElementById(name);
const made = (tag, words, kind) => {
  const one = document.createElement(tag);
  if (words) one.textContent = words;
  if (kind) one.className = kind;
  return one;
};
let number = 0;
const played = [];

function boom(ends) {
  const bar = made('span', '', 'boom');
  bar.setAttribute('aria-hidden', 'true');
  ends.forEach((end, section) => {
    const piece = made('i'), begin = section ? ends[section - 1] : 0;
    piece.style.left = `${100 * begin}%`;
    piece.style.width = `${100 * (end - begin)}%`;
    piece.style.height = `${100 * (1 - section / (ends.length + 2))}%`;
    bar.append(piece);
  });
  return bar;
}

function score() {
  const got = played.reduce((sum, one) => sum + one.points, 0);
  at('score').textContent = played.length ? `${got} of ${data.best * played.length} points` : '';
}

function ask() {
  const pick = data.picks[number];
  at('count').textContent = `Pick ${number + 1} of ${data.picks.length}`;
  at('asked').textContent = pick.asked;
  at('verdict').hidden = true;
  at('options').replaceChildren(...pick.options.map(option => {
    const row = made('button', '', option.ends.length ? 'option' : 'option none');
    row.type = 'button';
    row.append(made('b', option.letter));
    if (option.ends.length) row.append(boom(option.ends));
    row.append(made('span', option.words, 'words'));
    row.addEventListener('click', () => answer(option));
    return row;
  }));
}

function answer(chosen) {
  const pick = data.picks[number];
  played.push({points: chosen.points, set_by: pick.set_by});
  [...at('options').children].forEach((row, k) => {
    row.disabled = true;
    row.classList.toggle('chosen', pick.options[k] === chosen);
    row.classList.toggle('right', pick.options[k].points === data.best);
  });
  const points = chosen.points === 1 ? '1 point' : `${chosen.points} points`;
  at('first').textContent = `${chosen.first} ${points}.`;
  at('ways').replaceChildren(...pick.ways.map((words, k) => made('li', words, pick.carries[k] ? 'carries' : '')));
  at('why').textContent = `Why: ${chosen.why}`;
  const last = number + 1 === data.picks.length;
  at('next').textContent = last ? 'How it went' : 'Next pick';
  at('verdict').hidden = false;
  score();
  at('next').focus();
}

function finish() {
  at('count').textContent = 'All picks played';
  at('asked').textContent = at('score').textContent;
  at('options').replaceChildren(...Object.entries(data.where).flatMap(([set_by, words]) => {
    const of = played.filter(one => one.set_by === set_by);
    const got = of.reduce((sum, one) => sum + one.points, 0);
    return of.length ? [made('p', `${words[0].toUpperCase()}${words.slice(1)}: ${got} of ${data.best * of.length} points`)] : [];
  }));
  at('first').textContent = '';
  at('ways').replaceChildren();
  at('why').textContent = 'The same picks can be played again; other ones come with another seed.';
  at('next').textContent = 'Play again';
  at('next').focus();
}

at('next').addEventListener('click', () => {
  number += 1;
  if (number === data.picks.length) return finish();
  if (number > data.picks.length) { number = 0; played.length = 0; score(); }
  ask();
});
document.addEventListener('keydown', event => {
  const letter = event.key.toUpperCase();
  const row = [...at('options').children].find(one => !one.disabled && one.querySelector?.('b')?.textContent === letter);
  if (row && !event.ctrlKey && !event.altKey && !event.metaKey) row.click();
});
ask();
