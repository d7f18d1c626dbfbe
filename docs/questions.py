"""The page of problem families: of each one question, as a candidate sees it, and its solution."""

from pathlib import Path

from boomsim.papers.blueprint import make_blueprint
from boomsim.papers.family_registry import families
from boomsim.papers.paper import Paper, make_paper
from boomsim.papers.problems.family import TOPICS
from boomsim.papers.render.paper_markdown import drawings, render_markdown

SEED = "docs"


def page(folder: Path) -> str:
    """Every family by topic; drawings go to the folder, beside the page."""
    folder.mkdir(exist_ok=True)
    known = families().values()
    lines = [
        "# What can be asked",
        "",
        f"{len(known)} problem families, written from the families themselves. Each makes "
        f"unlimited questions, in metric or "
        "US customary units; here is one of each. The id is what a blueprint names; [Setting "
        "and marking](examiner.md) says how.",
        "",
    ]
    for topic in TOPICS:
        of_topic = [family for family in known if family.topic == topic]
        lines += [f"## {topic.capitalize()}", "", "| family | asks |", "|---|---|"]
        lines += [
            f"| [`{family.id}`](#{_anchor(family.id)}) | {family.title} |" for family in of_topic
        ]
        lines.append("")
        for family in of_topic:
            lines += [*_sample(family.id, family.title, folder), ""]
    return "\n".join(lines)


def _anchor(name: str) -> str:
    return name.replace("_", "-")


def _sample(name: str, title: str, folder: Path) -> list[str]:
    """One question, and its solution behind a fold."""
    paper = _paper(name)
    asked, solved = (_body(render_markdown(paper, kind=kind)) for kind in ("paper", "solutions"))
    same = next((k for k, (a, b) in enumerate(zip(asked, solved, strict=False)) if a != b), 0)
    text = "\n".join(
        [
            f"({_anchor(name)})=",
            f"### {title}",
            "",
            f"`{name}`, {paper.marks} mark{'s' * (paper.marks > 1)}",
            "",
            *asked,
            "",
            "<details><summary>Worked solution</summary>",
            "",
            *solved[same:],
            "",
            "</details>",
        ]
    )
    for file, svg in drawings(paper).items():
        (folder / f"{name}.svg").write_text(svg, encoding="utf-8")
        text = text.replace(f"]({file})", f"]({folder.name}/{name}.svg)")
    return text.splitlines()


def _paper(name: str) -> Paper:
    part = {"families": [name], "questions": 1}
    plan = {"title": name, "minutes": 10, "form": "mixed", "seed": SEED, "part": [part]}
    try:
        return make_paper(make_blueprint(plan | {"form": "numeric"}), variant=0)
    except ValueError:
        return make_paper(make_blueprint(plan), variant=0)


def _body(text: str) -> list[str]:
    """The question of a paper with one, without its head and foot."""
    inside = text.split("### Question 1", 1)[1].split("\n", 1)[1]
    return inside.rpartition("\n---\n")[0].strip().splitlines()
