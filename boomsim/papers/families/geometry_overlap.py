"""How much of a section is still inside the next larger one."""

from sympy import symbols

from boomsim.mechanics.geometry import layout
from boomsim.papers.check_models.textbook_boom import textbook_boom
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values
from boomsim.papers.sketches.boom_sketches import telescoped

l, n, s, k = symbols("l n s k")  # noqa: E741 - the letter of a section's length in every book
e, c = symbols("e c")


def picture(_: Values, shown: Shown) -> str:
    """Draw the section half out: what is asked for cannot be measured."""
    place = telescoped(1.0, overhang=2.2)
    mouth, head = place.start[0], place.end[0]
    place.sketch.dimension((75, 96), (head, 96), letter="l", value=shown("l"))
    place.sketch.dimension((75, 34), (mouth, 34), letter="c")
    place.sketch.dimension((mouth, 34), (head, 34), letter="e")
    return place.sketch.not_to_scale().svg()


def check(given: Values) -> float:
    """Lay the sections out as the call path does."""
    boom = textbook_boom((given["l"],) * 2, strokes=(given["s"],), noses=(given["n"],))
    return float(layout(boom, extension=(given["k"],)).overlap[0, 1])


FAMILY = Family(
    id="geometry_overlap",
    topic="geometry",
    title="Overlap that remains",
    text="A boom section is {l=} long. Retracted, its front stands {n=} ahead of the mouth of the "
    "next larger section; its stroke is {s=}. How much of it is still inside when it is {k=} of "
    "its stroke out?",
    assume="Lengths count along the boom axis; both pads touch.",
    givens=(
        Given(l, "length of the section", metric="8 to 13 m by 0.1", us="26 to 42 ft by 0.5"),
        Given(n, "nose of the section", metric="0.2 to 0.6 m by 0.05", us="1 to 2 ft by 0.25"),
        Given(s, "stroke", metric="5 to 9.5 m by 0.1", us="16 to 31 ft by 0.5"),
        Given(k, "fraction out", metric="25, 46, 50, 75, 92, 100 %",
              us="25, 46, 50, 75, 92, 100 %"),
    ),
    steps=(
        Step(e, n + s * k, "length that stands out of the mouth",
             "The nose stands out always; add the stroke times the fraction.",
             metric="m", us="ft"),
        Step(c, l - e, "overlap", "What does not stand out is still inside.",
             metric="m", us="ft"),
    ),
    slips=(
        Slip(c, e, "gave what stands out instead of what is inside"),
        Slip(e, s * k, "forgot the nose, which stands out even when the section is retracted"),
        Slip(e, n + s, "took the section for fully out"),
        Slip(e, n + l * k, "took the fraction of the length instead of the stroke"),
        Slip(e, s * k - n, "took the nose off instead of adding it"),
    ),
    where=(s + n < 0.86 * l, c > 0.12 * l),
    check=check,
    picture=picture,
    seen="The section lies in the larger one over the length c and stands out over the length e.",
)  # fmt: skip
