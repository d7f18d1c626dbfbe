"use strict";
// One book: questions on it, and its charts. Every figure was computed before; nothing is rated here.
const book = JSON.parse(document.getElementById("data").textContent);
const $ = id => document.getElementById(id);
const BLANK = 0xffff;
const rows = book.radii.length;

function unpack(text, kind) {
  const raw = Uint8Array.from(atob(text), c => c.charCodeAt(0));
  return new kind(raw.buffer);
}
for (const chapter of book.chapters) {
  chapter.steps = unpack(chapter.steps, book.wide ? Uint32Array : Uint16Array);
  chapter.governing = unpack(chapter.governing, Uint8Array);
  chapter.best = unpack(chapter.best, Uint16Array);
  chapter.why = unpack(chapter.why, Uint8Array);
  chapter.bestWhy = unpack(chapter.bestWhy, Uint8Array);
}
const blank = book.wide ? 0xffffffff : BLANK;

// --- small words ---------------------------------------------------------------------------------
const number = (value, digits) => value.toLocaleString("en", { minimumFractionDigits: digits, maximumFractionDigits: digits });
const mass = steps => number(steps * book.scale, book.decimals);
const ways = count => count === 1 ? "1 way" : `${count} ways`;
const radiusText = row => `${book.radii[row]} ${book.length}`;
const gives = limit => limit.words === "tipping over" ? limit.sets : `${limit.sets}: ${limit.words}`;

function element(tag, text, classes) {
  const made = document.createElement(tag);
  if (text !== undefined) made.textContent = text;
  if (classes) made.className = classes;
  return made;
}
function bars(way) {
  const made = element("span", undefined, "way");
  made.setAttribute("aria-hidden", "true");
  for (const percent of book.ways[way].percent) {
    const bar = element("i");
    bar.style.height = `${Math.max(percent, 4)}%`;
    made.append(bar);
  }
  return made;
}

// --- which chapter -------------------------------------------------------------------------------
const FACTS = ["sector", "counterweight", "support", "rule"];
for (const fact of FACTS)
  for (const value of new Set(book.chapters.map(c => c[fact]))) $(fact).append(element("option", value));
const chosen = () => book.chapters.find(c => FACTS.every(f => c[f] === $(f).value));

// --- predict first -------------------------------------------------------------------------------
// Question 7 is the same for everyone: a class can be sent to it by "#question=7" behind the address.
const score = new Map();
let turn = 1;
const WORDS = ["none", "one", "two", "three"];
const stepsOf = (asked, way) => book.chapters[asked.chapter].steps[way * rows + asked.row];
const limitOf = (asked, way) => book.limits[book.chapters[asked.chapter].governing[way * rows + asked.row]];

function ask(number) {
  const count = book.questions.length;
  turn = Math.min(Math.max(Math.round(number) || 1, 1), count);
  $("number").value = turn;
  $("answer").hidden = true;
  asked = -1;
  mark();
  const one = book.questions[turn - 1], chapter = book.chapters[one.chapter];
  const lengths = new Set(one.ways.map(way => book.ways[way].boom));
  const alike = lengths.size === 1 ? ` All ${WORDS[one.ways.length]} are ${[...lengths][0]} ${book.length} long.`.replace("All two", "Both") : "";
  $("question").textContent = `Sector: ${chapter.sector}; counterweight ${chapter.counterweight}; ${chapter.support}; rule: ${chapter.rule}. `
    + `The load hangs at a radius of ${radiusText(one.row)}. Which of these ways to extend lifts most there?${alike}`;
  const set = $("ways");
  set.disabled = false;
  for (const old of set.querySelectorAll("label")) old.remove();
  one.ways.forEach((way, k) => {
    const label = element("label", undefined, "way-choice"), radio = element("input");
    radio.type = "radio";
    radio.name = "way";
    radio.value = k;
    radio.addEventListener("change", () => { $("look").disabled = false; });
    label.append(radio, bars(way), `${book.ways[way].name} %, boom ${book.ways[way].boom} ${book.length}`);
    set.append(label);
  });
  $("look").disabled = true;
}
function reveal() {
  const one = book.questions[turn - 1], picked = document.querySelector("#ways input:checked");
  if (!picked || $("ways").disabled) return;
  const right = Number(picked.value) === one.right;
  score.set(turn, right);
  $("ways").disabled = $("look").disabled = true;
  const best = one.ways[one.right];
  $("verdict").textContent = `${right ? "Right" : "No"}: ${book.ways[best].name} % lifts most, ${mass(stepsOf(one, best))} ${book.mass} gross.`;
  const head = element("tr"), body = element("tbody"), top = element("thead");
  for (const text of ["extension, % (base side first)", `gross, ${book.mass}`, "what sets it"]) head.append(element("th", text));
  head.lastChild.className = "why";
  for (const way of one.ways) {
    const line = element("tr"), name = element("td"), limit = limitOf(one, way);
    name.append(bars(way), book.ways[way].name);
    line.append(name, element("td", mass(stepsOf(one, way))), element("td", gives(limit), "why" + (limit.breaks ? " breaks" : "")));
    if (way === best) line.className = "most";
    body.append(line);
  }
  top.append(head);
  $("figures").replaceChildren(top, body);
  const good = [...score.values()].filter(Boolean).length;
  $("score").textContent = `${good} of ${score.size} right so far. The chart below now shows this set-up and these ways, with the radius marked: would another way lift most nearer in, or farther out?`;
  $("answer").hidden = false;
  for (const fact of FACTS) $(fact).value = book.chapters[one.chapter][fact];
  $("columns").value = String(book.ways[best].group);
  asked = one.row;
  draw();
}
const hashed = () => Number((/question=(\d+)/.exec(location.hash) || [])[1] || 1);

// --- the chart -----------------------------------------------------------------------------------
let asked = -1, cells = [];
$("columns").append(new Option("the best way, for each boom length", "best"));
book.groups.forEach((group, k) => $("columns").append(new Option(`all ${group.ways.length} of ${group.length} ${book.length}`, String(k))));

function columnsOf(chapter) {
  if ($("columns").value !== "best")
    return book.groups[Number($("columns").value)].ways.map(way => ({ head: way, way: () => way, why: row => chapter.why[way * rows + row] }));
  return book.groups.map((group, g) => ({ group, way: row => chapter.best[g * rows + row], why: row => chapter.bestWhy[g * rows + row] }));
}
function draw() {
  const chapter = chosen(), columns = columnsOf(chapter), table = $("chart");
  $("rulewords").textContent = `${chapter.words}. ${chapter.parts}.`;
  const at = columns.map(column => Array.from({ length: rows }, (_, row) => {
    const way = column.way(row), here = way * rows + row;
    if (way === BLANK || chapter.steps[here] === blank) return null;
    return { way, row, steps: chapter.steps[here], limit: book.limits[chapter.governing[here]] };
  }));
  const reached = book.radii.map((_, row) => at.some(column => column[row]));
  const first = reached.indexOf(true), last = reached.lastIndexOf(true);
  table.className = `${$("tint").checked ? "tint" : ""} ${$("line").checked ? "line" : ""}`;
  const head = element("tr");
  head.append(element("th", `radius, ${book.length}`));
  for (const column of columns) head.append(heading(column));
  const top = element("thead"), body = element("tbody");
  top.append(head);
  cells = [];
  const told = new Set();
  for (let row = first; row >= 0 && row <= last; row++) {
    const line = element("tr");
    line.dataset.row = row;
    const name = element("th", book.radii[row]);
    name.scope = "row";
    line.append(name);
    at.forEach((column, c) => {
      const cell = drawn(column, at, c, row, first), why = book.reasons[columns[c].why(row)];
      if (!column[row] && why && why.sign) {
        cell.append(element("i", why.sign, "why"));
        cell.title = why.words;
        told.add(`${why.sign} ${why.words}`);
      }
      line.append(cell);
    });
    body.append(line);
  }
  table.replaceChildren(top, body);
  $("changes").hidden = $("columns").value !== "best";
  $("nothing").textContent = [...told].join("; ");
  if (cells.length) cells[0].node.tabIndex = 0;
  mark();
  $("cell").textContent = "Choose a cell to see which way it uses and what sets its figure.";
}
function mark() {
  for (const line of document.querySelectorAll("#chart tbody tr")) line.classList.toggle("asked", Number(line.dataset.row) === asked);
}
function heading(column) {
  const made = element("th");
  made.scope = "col";
  made.append(column.group ? column.group.length : book.ways[column.head].boom);
  if (!column.group) {
    for (const percent of book.ways[column.head].percent) made.append(element("small", `${Math.round(percent * 10) / 10} %`));
  }
  return made;
}
function drawn(column, at, c, row, first) {
  const here = column[row], made = element("td");
  if (!here) return made;
  made.className = "on" + (here.limit.breaks ? " breaks" : "");
  if (c === 0 || !at[c - 1][row]) made.classList.add("left");
  if (row === first || !column[row - 1]) made.classList.add("top");
  const right = at[c + 1] && at[c + 1][row], below = column[row + 1];
  if (right && right.limit.breaks !== here.limit.breaks) made.classList.add("lineright");
  if (below && below.limit.breaks !== here.limit.breaks) made.classList.add("linebelow");
  const before = column[row - 1];
  if ($("columns").value === "best" && before && before.way !== here.way) made.append(element("b", "▸"));
  made.append(mass(here.steps));
  if ($("codes").checked) made.append(element("small", here.limit.code));
  made.tabIndex = -1;
  made.setAttribute("aria-label", told(here));
  const entry = { node: made, row, column: c, here };
  cells.push(entry);
  made.addEventListener("click", () => pick(entry));
  made.addEventListener("focus", () => { $("cell").textContent = told(here); });
  made.addEventListener("keydown", event => move(event, entry));
  return made;
}
function told(here) {
  const way = book.ways[here.way];
  const load = `${mass(here.steps)} ${book.mass} gross`;
  return `${radiusText(here.row)}, boom ${way.boom} ${book.length}, extension ${way.name} %: ${load}; ${gives(here.limit)}.`;
}
function pick(entry) {
  for (const other of cells) other.node.tabIndex = -1;
  entry.node.tabIndex = 0;
  entry.node.focus({ preventScroll: true });
  $("cell").textContent = told(entry.here);
}
function move(event, entry) {
  const by = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
  if (!by) return;
  const next = cells.find(e => e.column === entry.column + by[0] && e.row === entry.row + by[1]);
  if (next) { pick(next); next.node.scrollIntoView({ block: "nearest", inline: "nearest" }); }
  event.preventDefault();
}
// --- begin ---------------------------------------------------------------------------------------
$("name").textContent = book.name;
$("about").textContent = `${book.title}. ${ways(book.chapters.length)} to set it up, ${ways(book.ways.length)} to extend its boom.`;
for (const fact of FACTS) $(fact).addEventListener("input", draw);
for (const id of ["columns", "line", "tint", "codes"]) $(id).addEventListener("input", draw);
for (const form of document.forms) form.addEventListener("submit", event => event.preventDefault());
draw();
if (book.questions.length) {
  $("of").textContent = `of ${book.questions.length}`;
  $("number").max = book.questions.length;
  $("number").addEventListener("change", () => ask(Number($("number").value)));
  $("next").addEventListener("click", () => ask(turn % book.questions.length + 1));
  $("choice").addEventListener("submit", reveal);
  addEventListener("hashchange", () => ask(hashed()));
  ask(hashed());
} else {
  for (const id of ["turn", "choice"]) $(id).hidden = true;
  $("question").textContent = "This book holds no two ways to extend whose figures lie far enough apart to ask about.";
}
