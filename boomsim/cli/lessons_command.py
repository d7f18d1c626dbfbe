"""``boomsim lessons``: stub."""

import argparse

HELP = "x"
EXAMPLE = "boomsim lessons x"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add."""


def run(chosen: argparse.Namespace) -> None:
    """Run."""
