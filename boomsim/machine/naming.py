"""What the parts of a machine are called."""


def section_name(number: int) -> str:
    """What a section is called in every table: the base section is number 0."""
    return "base section" if number == 0 else f"section {number}"
