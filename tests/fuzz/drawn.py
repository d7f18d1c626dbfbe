"""The fuzzers' draws, made by hypothesis: the same trials as quick tests."""

from hypothesis import strategies as st


class Drawn:
    """Draws as `atheris.FuzzedDataProvider` does."""

    def __init__(self, data: st.DataObject) -> None:
        self.data = data

    def ConsumeIntInRange(self, least: int, most: int) -> int:
        return self.data.draw(st.integers(least, most))

    def ConsumeBool(self) -> bool:
        return self.data.draw(st.booleans())

    def ConsumeBytes(self, most: int) -> bytes:
        return self.data.draw(st.binary(max_size=min(most, 200)))

    def ConsumeUnicode(self, most: int) -> str:
        return self.data.draw(st.text(max_size=most))

    def ConsumeUnicodeNoSurrogates(self, most: int) -> str:
        return self.data.draw(st.text(max_size=most))
