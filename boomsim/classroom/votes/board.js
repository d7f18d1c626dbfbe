'use strict';
let pictured = '';

function show(seen) {
  showQuestion(seen);
  showOptions(seen, () => made('div', '', 'option'));
  showAnswer(seen);
  at('votes').textContent = seen.votes;
  const word = seen.votes === 1 ? 'vote' : 'votes';
  at('of').textContent = `${word} of ${plural(seen.here, 'page')}${seen.question && seen.phase !== 'open' ? ', closed' : ''}`;
  const key = seen.question ? seen.question.key : '';
  document.body.dataset.asked = key ? 'yes' : 'no';
  if (key === pictured) return;
  pictured = key;
  at('picture').hidden = true;
  document.body.dataset.table = key && seen.question.table.length ? 'yes' : 'no';
  at('table').replaceChildren(...(key ? tableOf(seen.question) : []));
  if (key && !seen.question.table.length) at('picture').src = `picture?${encodeURIComponent(key)}`;
}

at('picture').addEventListener('load', () => { at('picture').hidden = false; });
listen(show);
