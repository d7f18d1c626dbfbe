"""The gallery: every picture that boomsim draws, with the command that draws it."""

from collections.abc import Callable

PICTURES = {
    "compare": (
        "One length, three ways",
        "compare",
        "Who carries most where, and where the lead changes. Broken: strength or a maker's "
        "value sets the figure; "
        "whole: stability does.",
    ),
    "chart": (
        "A load chart",
        "chart yard60",
        "One way to extend for each boom length, with the bold line.",
    ),
    "chart-best": (
        "The best of all ways",
        "chart yard60 --best",
        "In each cell the way that lifts most; small triangles where a column passes to "
        "another way.",
    ),
    "chart-class": (
        "A chart for the class to finish",
        "chart yard60 --class",
        "Without bold line and shading: the class draws them. An answer sheet is written "
        "beside it.",
    ),
    "chart-breaks": (
        "What sets the figure, what breaks first",
        "chart yard60 --breaks-first",
        "The bold line, and a second one: what really comes first when the load is raised "
        "past all margins.",
    ),
    "reeving": (
        "How a boom is reeved",
        'reeving yard60 --length "33.1 m"',
        "The tackle with its dead end, where the rope is, and parts of line by boom length.",
    ),
    "range": (
        "Radius and height",
        "range yard60 --extension 0,0,45,45",
        "Where the head can be, and which bands of capacity lie there.",
    ),
    "around": (
        "All around the crane",
        'around truck18 --radius "12 m"',
        "Capacity against slew angle, beside the plan with its tipping lines.",
    ),
    "overload": (
        "Past the rating",
        'overload yard60 --extension 0,0,0,90 --radius "6 m"',
        "The load is raised until something gives way: what comes first, and whether anything "
        "warns.",
    ),
    "map": (
        "Breaks first or tips first",
        "overload yard60 --map",
        "First failure over tipping load, over the cells of a chart.",
    ),
    "losses": (
        "What eats capacity",
        'losses yard60 --extension 0,0,45,45 --radius "12 m"',
        "Lean, side pull, wind, a soft float, a metre of radius, a kilogram in each section.",
    ),
    "pick": (
        "May I make this pick?",
        'pick yard60 --extension 0,0,45,45 --radius "9.8 m" --load "12 t" --slew "0 deg, 90 deg" '
        '--bearing "200 kPa" --mat "1.5 m2" --wind "6 m/s" --load-area "1 m2"',
        "An operator's checks in their order: within, not within, not looked at. No leave to lift.",
    ),
    "slabs": (
        "Setting up",
        "slabs yard60",
        "At which radii a crane lifts the slabs of its own counterweight, which it has not on yet.",
    ),
    "dynamics": (
        "A load that moves",
        'dynamics yard60 --extension 0,0,45,45 --radius "10 m"',
        "Lifted off, stopped, dropped, swung: as which load, hanging still, it counts.",
    ),
    "indicator": (
        "What an indicator knows",
        'indicator yard60 --extension 0,0,45,45 --radius "10 m"',
        "What a simulated load-moment indicator shows beside what is, condition by condition.",
    ),
    "lower": (
        "Lowering with a load",
        'lower yard60 --extension 0,0,0,90 --load "12 t"',
        "How far a boom may come down with a load, and where it would tip.",
    ),
    "telescope": (
        "Telescoping with a load",
        'telescope yard60 --load "8 t" --angle "60 deg"',
        "What the telescope cylinder must push, and how much may hang while it does.",
    ),
    "pins": (
        "From pin to pin",
        "pins yard60 --from 0,0,45,45 --to 45,45,0,0",
        "In which order the sections are moved, and how far the boom must come in between.",
    ),
    "builds": (
        "Built light, built stout",
        'compare yard60 --plates "0.8, 1, 1.3"',
        "The same crane with thinner and thicker plates: the bold line moves.",
    ),
}
"""By the name of the file: title, command, words."""


def draw(run: Callable[[str], str]) -> dict[str, str]:
    """Draw every picture.

    Returns
    -------
    dict of str to str
        What each command says, without the line that names the picture's file
    """
    said = {}
    for name, (_, line, _) in PICTURES.items():
        words = run(f"{line} --figure shown/{name}.svg")
        said[name] = words.partition("\nThe picture is in ")[0]
    return said


def page() -> str:
    """Every picture with its command."""
    lines = [
        "# Gallery",
        "",
        "Every picture, and the command that drew it for this page. Click one to see it "
        "large; with `--figure FILE` it "
        "goes to a file: `.svg`, `.pdf` or `.png`, with `--units us` in feet and pounds.",
        "",
        "```{image} shown/explorer.svg\n:alt: The explorer\n:width: 100%\n"
        ":target: _images/explorer.svg\n:class: wide\n```",
        "",
        "`boomsim lab`, then `explorer.ipynb`: all of a lift at once, with sliders. [Trying "
        "it alone](apprentice.md)",
        "",
    ]
    for name, (title, line, words) in PICTURES.items():
        lines += [
            f"## {title}",
            "",
            words,
            "",
            f"```sh\nboomsim {line} --figure {name}.svg\n```",
            "",
            f"```{{image}} shown/{name}.svg\n:alt: {title}\n:width: 100%\n"
            f":target: _images/{name}.svg\n:class: wide\n```",
            "",
        ]
    return "\n".join(lines)
