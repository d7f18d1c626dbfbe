"""Style sheet and the one script of the explorer, as the browser gets them."""

from html import escape
from importlib.resources import files

HELPER = """
(function look(image, tries) {
  const root = image.closest('.boomsim-explorer');
  if (!root) { if (tries) setTimeout(() => look(image, tries - 1), 200); return; }
  const name = () => root.querySelectorAll('.widget-slider').forEach(one => {
    const handle = one.querySelector('.noUi-handle'), label = one.querySelector('.widget-label');
    if (handle && label) handle.setAttribute('aria-label', label.textContent);
  });
  name();
  new MutationObserver(name).observe(root, {childList: true, subtree: true});
  root.addEventListener('focusin', () => setTimeout(() => {
    const notebook = root.closest('.jp-Notebook');
    const here = root.contains(document.activeElement);
    if (notebook && here) notebook.classList.add('jp-mod-readWrite');
  }));
})(this, 50)
"""
"""Sliders come without a name for those who do not see them: give each handle its label's. And a
notebook takes arrow keys, Enter and Space for itself unless it thinks that text is being written:
let it think so while the explorer has the keyboard."""


def head() -> str:
    """HTML that an explorer begins with."""
    sheet = files("boomsim.lab.widgets").joinpath("explorer.css").read_text(encoding="utf-8")
    helper = escape(" ".join(HELPER.split()), quote=True)
    image = f'<img src="data:," alt="" style="display:none" onerror="{helper}">'
    return f"<style>{sheet}</style>{image}"
