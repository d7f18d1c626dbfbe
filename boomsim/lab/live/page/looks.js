// Sizes, dark or light, and large for a class.
const narrow = matchMedia('(max-width: 999px), (max-height: 499px)');
const layout = () => document.body.classList.contains('presenting') ? 'wall' : narrow.matches ? 'phone' : 'desk';
const dark = matchMedia('(prefers-color-scheme: dark)');
let theme = null;  // none chosen: as the reader's machine has it

function paint() {
  const now = theme || (dark.matches ? 'dark' : 'light');
  document.documentElement.dataset.theme = now;
  at('theme').setAttribute('aria-pressed', now === 'dark');
}

dark.addEventListener('change', paint);
at('theme').addEventListener('click', () => {
  theme = document.documentElement.dataset.theme === 'dark' ? 'light' : 'dark';
  paint();
});
paint();

function present(large) {
  document.body.classList.toggle('presenting', large);
  at('present').setAttribute('aria-pressed', large);
  ask({do: 'look', layout: layout()});
}

at('present').addEventListener('click', () => {
  const large = !document.body.classList.contains('presenting');
  present(large);
  if (large) document.documentElement.requestFullscreen?.().catch(() => {});
  else if (document.fullscreenElement) document.exitFullscreen();
});
document.addEventListener('fullscreenchange', () => {
  if (!document.fullscreenElement && document.body.classList.contains('presenting')) present(false);
});
