"""What every study gives back: a result that says, shows, draws and hands out what it found."""

from types import ModuleType
from typing import TYPE_CHECKING, Any, ClassVar

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.face.given_values import Given

UNITS = ("metric", "us")


class Said(str):
    """Text that a notebook or a console shows as lines, not as one quoted line."""

    __slots__ = ()

    def __repr__(self) -> str:
        return str(self)


class Result:
    """What a study found.

    Attributes
    ----------
    kind : str
        Which study, as in the schema of its JSON
    """

    __slots__ = ()
    kind: ClassVar[str]
    _report: ClassVar[ModuleType]
    """Of :mod:`boomsim.reports`: what this study says as data, text and figure."""
    study: Any

    def data(self) -> dict[str, Any]:
        """SI numbers, arrays and strings; what JSON's schema and the caution are put before."""
        found: dict[str, Any] = self._report.as_json(self.study)
        return found

    def rows(self) -> list[dict[str, Any]]:
        """One row a figure, SI; a blank cell has None as its governing limit."""
        found: list[dict[str, Any]] = self._report.rows(self.study)
        return found

    def _lines(self, units: str) -> str:
        return str(self._report.as_text(self.study, units=units))

    def _figure(self, units: str) -> "Figure":
        found: Figure = self._report.figure(self.study, units=units)
        return found

    def _summary(self) -> str:
        return str(self._report.summary(self.study))

    def _usual(self) -> str:
        """Units in which the study was made."""
        return str(getattr(self, "units", "metric"))

    def _units(self, units: str | None) -> str:
        return self._usual() if units is None else _checked(units)

    def text(self, units: str | None = None) -> Said:
        """Tell what was found, as the command prints it.

        Parameters
        ----------
        units : str, optional
            "metric" or "us"; default: those of the study
        """
        from boomsim.reports.text_in_trade_words import in_trade_words

        known = self._units(units)
        return Said(in_trade_words(self._lines(known), known))

    def plot(self, units: str | None = None) -> "Figure":
        """Draw what was found, as the command's --figure does.

        Parameters
        ----------
        units : str, optional
            "metric" or "us"; default: those of the study
        """
        from boomsim.figures.labels_in_trade_words import label_in_trade_words

        known = self._units(units)
        return label_in_trade_words(self._figure(known), known)

    def to_dict(self) -> dict[str, Any]:
        """Give the JSON of the command.

        Returns
        -------
        dict
            SI; None for what is no number
        """
        from boomsim.reports.json_schema import headed

        return headed(self.kind, self.data())

    def to_dataframe(self) -> Any:
        """Give the rows as a data frame; needs pandas.

        Returns
        -------
        pandas.DataFrame
            SI
        """
        try:
            import pandas  # type: ignore[import-untyped, import-not-found, unused-ignore]
        except ImportError:
            raise ImportError(
                "A data frame needs pandas, which is not installed. Install it with "
                "'pip install pandas', or take rows(): the same figures as a list of dictionaries."
            ) from None
        from boomsim.reports.json_schema import plain

        return pandas.DataFrame(plain(self.rows()))

    def __repr__(self) -> str:
        return f"<boomsim {self.kind}: {self._summary()}>"

    def _repr_html_(self) -> str:
        """Tables and sentences for a notebook; the last is the caution."""
        from boomsim.reports.html_of_text import html_of

        return html_of(self.text())


class ExplainedResult(Result):
    """A result that also says why, at a radius."""

    __slots__ = ()

    def explain(self, radius: "Given", units: str = "metric") -> Said:
        """Tell what lies behind the figures of one radius.

        Parameters
        ----------
        radius : str or float
            [m]
        units : str
            "metric" or "us"
        """
        from boomsim.face.given_values import figure
        from boomsim.reports.text_in_trade_words import in_trade_words

        at = figure(radius, "length", what="radius")
        return Said(in_trade_words(self._report.why(self.study, radius=at, units=units), units))


def _checked(units: str) -> str:
    """Refuse units that are none."""
    if units not in UNITS:
        raise ValueError(f"There are no units {units!r}. Choose 'metric' or 'us'.")
    return units


def key_of(limit: Any) -> str | None:
    """Name of a limit; None where nothing governs."""
    return None if limit is None else limit.key
