"""``boomsim machines``: the built-in machines."""

import argparse

from boomsim.cli.command_options import add_output
from boomsim.cli.json_printing import print_json
from boomsim.reports.text_tables import table

HELP = "list the built-in machines"
EXAMPLE = "boomsim machines"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    add_output(parser, figure=False)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    from boomsim.machine.machine_files import load_machine, machine_names
    from boomsim.rating.strategies import range_of_length
    from boomsim.units import show

    found = [load_machine(name) for name in machine_names()]
    lengths = [range_of_length(m.boom) for m in found]
    if chosen.json:
        answer = [
            {"name": m.name, "title": m.title, "systems": m.boom.systems, "boom_length": length}
            for m, length in zip(found, lengths, strict=True)
        ]
        print_json("machines", {"machines": answer})
        return
    rows = [
        [
            m.name,
            " to ".join(show(end, "boom_length", chosen.units) for end in (short, long)),
            ", ".join(m.boom.systems),
            m.title,
        ]
        for m, (short, long) in zip(found, lengths, strict=True)
    ]
    print(table(["machine", "boom length", "boom system", "what it is"], rows))
    print(
        "\nTo make your own: boomsim describe yard60 --toml > mine.toml, then edit it and use it."
    )
