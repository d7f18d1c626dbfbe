"""A figure's labels in the words that go with its units."""

from matplotlib.figure import Figure
from matplotlib.text import Text

from boomsim.units import in_words


def label_in_trade_words(figure: Figure, units: str) -> Figure:
    """Say every label of a figure in the words of one system of units."""
    for text in figure.findobj(Text) if units == "us" else []:
        said = in_words(text.get_text(), units)
        if said != text.get_text():
            text.set_text(said)
    return figure
