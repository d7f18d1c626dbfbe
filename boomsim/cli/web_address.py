"""A web address that an option gives: links are made of it, and QR codes of the links."""

import re
from urllib.parse import urlsplit

EXAMPLE = "https://example.org/crane.html"
"""Of a page."""

LONGEST = 200
"""Of a longer one the code would be too fine for a camera, with a scene behind it [letters]."""

_LETTERS = re.compile(r"[A-Za-z0-9\-._~:/?\[\]@!$&'()*+,;=%]+")
"""What an address may have in it (RFC 3986), but the sign before a part of a page."""


def web_address(text: str, *, example: str = EXAMPLE, option: str = "--address") -> str:
    """Refuse what is no address on the web.

    Parameters
    ----------
    example : str
        One that would do

    Raises
    ------
    ValueError
    """
    if len(text) > LONGEST:
        raise ValueError(
            f"{option} has {len(text)} letters, and a QR code that a camera reads on paper holds "
            f"at most {LONGEST} beside a scene. Give a shorter one, such as {example}."
        )
    if not (_LETTERS.fullmatch(text) and _is_of_the_web(text)):
        raise ValueError(
            f'{option} "{_in_a_line(text)}" is no web address of a page. Give one such as '
            f"{example}, without a # part."
        )
    return text


def _in_a_line(text: str) -> str:
    return "".join(one if one.isprintable() else "?" for one in text)


def _is_of_the_web(text: str) -> bool:
    try:
        parts = urlsplit(text)
        _ = parts.port  # refuses what is no number, and one past 65,535
    except ValueError:
        return False
    return parts.scheme in ("http", "https") and bool(parts.hostname) and parts.username is None
