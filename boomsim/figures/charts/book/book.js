"use strict";
// The charts of one book: choose a chapter, search it, show it. Every figure was computed before; nothing is rated here.
const book = JSON.parse(document.getElementById("data").textContent);
const $ = id => document.getElementById(id);
const BLANK = 0xffff, FEW = 12;
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
const radiusText = row => `${book.radii[row]} ${book.length}`;
const gives = limit => limit.words === "tipping over" ? limit.sets : `${limit.sets}: ${limit.words}`;
const typed = id => Number($(id).value.trim().replace(",", "."));

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

// --- the search ----------------------------------------------------------------------------------
let every = false;
function search() {
  const radius = typed("radius"), load = typed("load"), taken = typed("taken");
  const good = { radius: radius > 0, load: load >= 0, taken: taken >= 0 };
  for (const [id, fine] of Object.entries(good)) $(id).setAttribute("aria-invalid", String(!fine));
  const row = book.radiusValues.findIndex(r => r >= radius * (1 - 1e-9));
  const table = $("found");
  table.replaceChildren();
  $("more").hidden = true;
  asked = -1;
  if (!Object.values(good).every(Boolean)) {
    $("answer").textContent = "Give a radius above nought, a load and deductions, as plain numbers.";
    return mark();
  }
  if (row < 0) {
    $("answer").textContent = `This book ends at ${radiusText(rows - 1)}: it allows nothing beyond.`;
    return mark();
  }
  asked = row;
  const chapter = chosen(), need = load + taken;
  const found = [];
  for (let way = 0; way < book.ways.length; way++) {
    const steps = chapter.steps[way * rows + row];
    if (steps !== blank && steps * book.scale >= need - 1e-9) found.push({ way, steps, limit: chapter.governing[way * rows + row] });
  }
  found.sort((a, b) => b.steps - a.steps || book.ways[a.way].length - book.ways[b.way].length);
  const exact = Math.abs(book.radiusValues[row] - radius) < 1e-9;
  $("answer").textContent = `${exact ? "At" : "The next larger radius counts: at"} ${radiusText(row)}, ${found.length || "none"} of `
    + `${book.ways.length} ways to extend carr${found.length === 1 ? "ies" : "y"} at least ${number(need, book.decimals)} ${book.mass} gross.`;
  if (found.length) list(table, found, taken);
  $("more").hidden = every || found.length <= FEW;
  $("more").textContent = `Show all ${found.length}`;
  mark();
}
function list(table, found, taken) {
  const head = element("tr");
  for (const text of ["extension, % (base side first)", `boom, ${book.length}`, `gross, ${book.mass}`, `net, ${book.mass}`, "what sets it"]) head.append(element("th", text));
  head.lastChild.className = "why";
  const body = element("tbody");
  for (const { way, steps, limit } of every ? found : found.slice(0, FEW)) {
    const line = element("tr"), name = element("td");
    name.append(bars(way), book.ways[way].name);
    line.append(name, element("td", book.ways[way].boom), element("td", mass(steps)),
      element("td", number(Math.max(steps * book.scale - taken, 0), book.decimals)),
      element("td", gives(book.limits[limit]), "why" + (book.limits[limit].breaks ? " breaks" : "")));
    line.addEventListener("click", () => { $("columns").value = String(book.ways[way].group); draw(); show(asked, way); $("frame").scrollIntoView({ block: "nearest" }); });
    body.append(line);
  }
  const top = element("thead");
  top.append(head);
  table.append(top, body);
}
$("more").addEventListener("click", () => { every = true; search(); });

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
  $("rulewords").textContent = `${chapter.words}. ${chapter.parts} parts of line.`;
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
// Drawing a thousand cells takes time: a new question only marks another row.
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
function show(row, way) {
  const entry = cells.find(e => e.row === row && e.here.way === way);
  if (entry) pick(entry);
}

// --- begin ---------------------------------------------------------------------------------------
$("name").textContent = book.name;
$("about").textContent = `${book.title}. ${book.chapters.length} ways to set it up, ${book.ways.length} ways to extend its boom.`;
for (const node of document.querySelectorAll(".length")) node.textContent = book.length;
for (const node of document.querySelectorAll(".mass")) node.textContent = book.mass;
$("radius").value = book.radii[Math.floor(rows / 4)];
$("load").value = number(book.example, book.decimals).replaceAll(",", "");
$("taken").value = String(book.taken);
for (const id of ["radius", "load", "taken"]) $(id).addEventListener("input", () => { every = false; search(); });
for (const fact of FACTS) $(fact).addEventListener("input", () => { every = false; draw(); search(); });
for (const id of ["columns", "line", "tint", "codes"]) $(id).addEventListener("input", draw);
for (const form of document.forms) form.addEventListener("submit", event => event.preventDefault());
draw();
search();
