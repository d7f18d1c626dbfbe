'use strict';
// What all three pages share: the stream of what may be seen, and how a question is shown. Words
// are set as text alone; nothing that anybody sent is among them.
const at = name => document.getElementById(name);
const made = (tag, words, kind) => {
  const one = document.createElement(tag);
  if (words) one.textContent = words;
  if (kind) one.className = kind;
  return one;
};
const plural = (count, words) => `${count} ${words}${count === 1 ? '' : 's'}`;
let shown = null, me = sessionStorage.getItem('boomsim-voter') || '';

function showQuestion(seen) {
  const asked = seen.question;
  if (!asked) {
    at('question').replaceChildren(made('h1', 'The first question comes in a moment.'));
    return;
  }
  const parts = [made('p', `Lesson ${asked.lesson}: ${asked.title}`, 'small'), made('h1', asked.words)];
  if (asked.asked) parts.push(made('p', `What is asked now: ${asked.asked}`, 'asked'));
  at('question').replaceChildren(...parts);
}

// One row an answer: its letter, its words, and once it is shown how many chose it.
function showOptions(seen, row) {
  const counts = seen.counts, before = seen.before || {};
  const all = counts ? Object.values(counts).reduce((sum, one) => sum + one, 0) : 0;
  const earlier = Object.values(before).reduce((sum, one) => sum + one, 0);
  at('options').replaceChildren(...(seen.question ? seen.question.options : []).map(option => {
    const one = row(option);
    one.dataset.letter = option.letter;
    one.append(made('b', option.letter, 'letter'), made('span', option.words || `way ${option.letter}`, 'words'));
    if (seen.answer && seen.answer.letter === option.letter) {
      one.classList.add('right');
      one.append(made('span', '✓ the model says this', 'mark'));
    }
    if (counts) {
      const share = all ? counts[option.letter] / all : 0, bar = made('span', '', 'bar');
      const fill = made('i'), said = made('span', `${counts[option.letter]}  (${Math.round(100 * share)} %)`, 'share');
      fill.style.width = `${100 * share}%`;
      bar.append(fill);
      if (earlier) {
        const then = made('i', '', 'before');
        then.style.width = `${100 * (before[option.letter] || 0) / earlier}%`;
        bar.append(then);
        said.append(made('span', ` before: ${before[option.letter] || 0}`, 'small'));
      }
      one.append(bar, said);
    }
    const thought = seen.answer && seen.answer.thoughts[option.letter];
    if (thought) one.append(made('span', `Whoever chose ${option.letter} probably ${thought}.`, 'thought'));
    return one;
  }));
}

function showAnswer(seen) {
  const answer = seen.answer;
  at('answer').replaceChildren(...(answer
    ? [made('h2', `The model says ${answer.letter}`), made('p', answer.reason)] : []));
}

// The table of the lesson's sheet, where the question is one that it is read for.
function tableOf(asked) {
  const table = made('table');
  asked.table.forEach((row, number) => {
    const line = made('tr');
    line.append(...row.map(words => made(number ? 'td' : 'th', words)));
    table.append(line);
  });
  return [made('p', asked.given, 'small'), table];
}

function listen(show) {
  const events = new EventSource(`events?id=${encodeURIComponent(me)}`);
  events.addEventListener('you', ({data}) => {
    me = JSON.parse(data);
    sessionStorage.setItem('boomsim-voter', me);
  });
  events.addEventListener('seen', ({data}) => {
    shown = JSON.parse(data);
    at('line').textContent = 'connected';
    show(shown);
    document.body.dataset.round = shown.round;
    document.body.dataset.phase = shown.phase;
  });
  events.onerror = () => {
    at('line').textContent = events.readyState === EventSource.CLOSED
      ? 'not connected: the room is full or the class has ended; reload to try again' : 'connecting again …';
  };
  addEventListener('pagehide', () => events.close());
}
