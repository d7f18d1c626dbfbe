"""Options that several studies share: which configuration and radii, on which ground."""

import argparse


def add_place(parser: argparse.ArgumentParser, *, several: bool) -> None:
    """Give a command its configuration and its radius or radii."""
    parser.add_argument(
        "--extension",
        metavar="PERCENT",
        help="of each moving section, base side first, as 0,0,45,45 (default: one that shows "
        "the question)",
    )
    example = "'6 m, 12 m'" if several else "'12 m'"
    parser.add_argument(
        "--radius",
        metavar="LENGTH",
        help=f"loaded radius, such as {example} (default: within the reach)",
    )


def add_ground(parser: argparse.ArgumentParser) -> None:
    """Give a command the stiffness of what the floats stand on."""
    parser.add_argument(
        "--ground",
        metavar="STIFFNESS",
        help="of one float with the ground under it, such as '6 MN/m' (default: the machine's)",
    )
