"""Text files as people have them: with or without a mark at the beginning, never endless."""

from pathlib import Path

from boomsim.files.file_errors import FileError, explained

UTF_16 = (b"\xff\xfe", b"\xfe\xff")
"""How a file in UTF-16 begins, whichever byte comes first."""


def read_bytes(path: Path, *, most: int) -> bytes:
    """Read a file that may be missing, huge or endless.

    Parameters
    ----------
    most : int
        So much is read at most [bytes]

    Raises
    ------
    FileError
    """
    with explained(path, to_be="read"), path.open("rb") as file:
        data = file.read(most + 1)
    if len(data) > most:
        raise FileError(
            f"{path} has more than {most // 1024} KiB, and no such file is that long. Check that "
            "it is the right one."
        )
    return data


def text_of(data: bytes, *, name: str) -> str:
    """Read bytes as text: UTF-8, or the UTF-16 into which some shells write.

    Parameters
    ----------
    name : str
        Of the file, for the message

    Raises
    ------
    FileError
    """
    try:
        return data.decode("utf-16" if data[:2] in UTF_16 else "utf-8-sig")
    except UnicodeDecodeError:
        raise FileError(
            f"{name} is not UTF-8 text. Check that it is the right file, and save it as UTF-8."
        ) from None
