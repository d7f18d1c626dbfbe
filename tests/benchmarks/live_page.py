"""How long a live page takes: to its first picture, to its model, and for each step of a slider.

``python tests/benchmarks/live_page.py FILE.html [OPENINGS]``; prints figures and asserts nothing.
"""

import os
import sys
import time
from pathlib import Path
from statistics import median

from playwright.sync_api import sync_playwright

STEPS = 100
SIZES = {"desk": (1280, 800), "phone": (390, 844)}
GRIPS = ("load", "tip")
READY = "() => document.getElementById('state').textContent.startsWith('Ready')"

MOVE = """async ([name, steps, answers]) => {
  const input = document.querySelector(`[name="${name}"]`), took = [], whole = [];
  // Waits without spinning, which would take a core from the model.
  const told = name => new Promise(done => new MutationObserver((_, one) => {
    one.disconnect();
    done();
  }).observe(document.body, {attributes: true, attributeFilter: [name]}));
  let way = 1;
  for (let k = 0; k < steps; k++) {
    const start = performance.now();
    if (Number(input.value) >= Number(input.max)) way = -1;
    if (Number(input.value) <= Number(input.min)) way = 1;
    input.value = Number(input.value) + way * Number(input.step);
    const answered = told('data-asked'), followed = told('data-whole');
    if (answers) {
      input.dispatchEvent(new Event('input'));
      await answered;
    }
    document.body.getBoundingClientRect();
    took.push(performance.now() - start);
    if (answers) await followed;
    document.body.getBoundingClientRect();
    whole.push(performance.now() - start);
    await new Promise(done => setTimeout(done, 5));
  }
  return [took, whole];
}"""

DRAG = """async ([grip, steps]) => {
  const took = [], whole = [], frame = shown.frame, [out, up] = grip === 'load' ? [8, 0] : [6, 16];
  const told = name => new Promise(done => new MutationObserver((_, one) => {
    one.disconnect();
    done();
  }).observe(document.body, {attributes: true, attributeFilter: [name]}));
  for (let k = 0; k < steps; k++) {
    const start = performance.now(), answered = told('data-asked'), followed = told('data-whole');
    ask({do: 'drag', grip, frame, place: [out + 0.05 * k, up - 0.03 * k]});
    await answered;
    document.body.getBoundingClientRect();
    took.push(performance.now() - start);
    await followed;
    document.body.getBoundingClientRect();
    whole.push(performance.now() - start);
    await new Promise(done => setTimeout(done, 5));
  }
  ask({do: 'drop'});
  return [took, whole];
}"""
"""What a pointer asks for as it moves, and the time until the new picture is laid out."""

PAST = """async () => {
  const start = performance.now();
  document.getElementById('raise').click();
  while (!document.querySelector('#pastview svg')) await new Promise(done => setTimeout(done, 10));
  return performance.now() - start;
}"""


def processor_seconds() -> float:
    """Processor time of every page of this run so far; steadier than the clock on a busy machine.

    Read from Linux's /proc; zero elsewhere.
    """
    mine, found = {os.getpid()}, 0.0
    processes = sorted(int(p.name) for p in Path("/proc").glob("[0-9]*"))
    for number in processes:  # parents have smaller numbers than their children
        try:
            fields = Path(f"/proc/{number}/stat").read_text().rsplit(")", 1)[1].split()
            words = Path(f"/proc/{number}/cmdline").read_bytes()
        except OSError:
            continue
        if int(fields[1]) in mine:
            mine.add(number)
            if b"--type=renderer" in words:
                found += (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")
    return found


def timed(page, program: str, given: list) -> tuple[list[float], list[float], float]:
    """Run a script of steps: milliseconds to each picture, to all that follows it, of processor."""
    before = processor_seconds()
    took, whole = (sorted(times) for times in page.evaluate(program, given))
    return took, whole, 1e3 * (processor_seconds() - before) / len(took)


def opened(browser, address: str, size: tuple[int, int]):
    """Open the page; seconds to the first picture and to the model."""
    context = browser.new_context(viewport={"width": size[0], "height": size[1]}, offline=True)
    page, start = context.new_page(), time.perf_counter()
    page.goto(address, wait_until="commit")
    page.wait_for_selector("#stage svg")
    first = time.perf_counter() - start
    page.wait_for_function(READY, timeout=120_000, polling=20)
    return page, first, time.perf_counter() - start


def main(file: str, openings: int) -> None:
    address = Path(file).resolve().as_uri()
    with sync_playwright() as started:
        browser = started.chromium.launch(
            executable_path="/usr/bin/chromium", args=["--no-sandbox", "--disable-gpu"]
        )
        for name, size in SIZES.items():
            times = []
            for _ in range(openings):
                page, *seconds = opened(browser, address, size)
                times.append(seconds)
                if len(times) < openings:
                    page.context.close()
            first, ready = zip(*times, strict=True)
            print(
                f"{name}: first picture {median(first):.1f} s ({max(first):.1f} at most), ", end=""
            )
            print(f"model {median(ready):.1f} s ({max(ready):.1f} at most), {openings} openings")
            # A section goes alone, and not against another, when the radius is kept.
            page.locator('[name="keep"]').select_option(label="the radius")
            page.wait_for_function("() => !busy && !wishes.length")
            rows = {"bare slider": timed(page, MOVE, ["load", STEPS, False])}
            for moved in ("load", "radius", "section 4", "slew"):
                rows[moved] = timed(page, MOVE, [moved, STEPS, True])
            rows |= {f"{grip} dragged": timed(page, DRAG, [grip, STEPS]) for grip in GRIPS}
            for moved, (took, whole, processor) in rows.items():
                print(
                    f"  {moved}: {median(took):.0f} ms at the median, "
                    f"{took[int(0.95 * STEPS)]:.0f} at 95 %, {took[-1]:.0f} at most; "
                    f"with the diagrams below it {median(whole):.0f}, "
                    f"{whole[int(0.95 * STEPS)]:.0f} at 95 %; "
                    f"{processor:.0f} ms of processor time"
                )
            print(
                f"  past the rated load, from the button to a picture: {page.evaluate(PAST):.0f} ms"
            )
            page.context.close()
        browser.close()


if __name__ == "__main__":
    main(sys.argv[1], int(sys.argv[2]) if len(sys.argv) > 2 else 3)
