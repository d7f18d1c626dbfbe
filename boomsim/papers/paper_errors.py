"""What can go wrong with a paper, said so that the reader knows what to do next."""


class PaperError(ValueError):
    """A paper cannot be made or marked: says what, which value, what is needed, the way out."""


class FamilyError(PaperError):
    """A problem family contradicts itself, or the call path contradicts it."""


class BlueprintError(PaperError):
    """A blueprint cannot be read; names every fault at once."""


class AnswerError(PaperError):
    """One answer or one row cannot be read; the others are still marked."""
