"""A typeface inside a PDF: the glyphs that are used, their widths, and what they mean."""

from collections.abc import Callable
from io import BytesIO

from fontTools import subset  # type: ignore[import-untyped]

from boomsim.figures.charts.typeface import FAMILY, face, face_file

Used = dict[int, tuple[str, float]]
"""From the number of a glyph to its character and its width [em]."""


def font_object(
    new: Callable[[], int],
    write: Callable[[int, str], int],
    stream: Callable[[bytes], int],
    *,
    used: Used,
    bold: bool,
) -> int:
    """Embed the glyphs used, as a composite font whose codes are glyph numbers.

    ISO 32000-1, 9.7.4 and 9.8.

    Parameters
    ----------
    new, write, stream : callable
        Number an object, write it, write a stream
    used : dict

    Returns
    -------
    int
        Number of the font object
    """
    name = f"BOOMSM+{FAMILY}{'-Bold' if bold else ''}"
    head, line = face(bold)["head"], face(bold)["hhea"]
    share = 1000.0 / head.unitsPerEm
    bounds = " ".join(f"{share * v:.0f}" for v in (head.xMin, head.yMin, head.xMax, head.yMax))
    file = stream(cut_face([character for character, _ in used.values()], bold=bold))
    described = write(
        new(),
        f"<< /Type /FontDescriptor /FontName /{name} /Flags 4 /FontBBox [{bounds}] "
        f"/ItalicAngle 0 /Ascent {share * line.ascent:.0f} /Descent {share * line.descent:.0f} "
        f"/CapHeight 662 /StemV {140 if bold else 80} /FontFile2 {file} 0 R >>",
    )
    widths = " ".join(f"{n} [{1000 * w:.0f}]" for n, (_, w) in sorted(used.items()))
    inner = write(
        new(),
        f"<< /Type /Font /Subtype /CIDFontType2 /BaseFont /{name} /CIDToGIDMap /Identity "
        "/CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >> "
        f"/FontDescriptor {described} 0 R /W [{widths}] >>",
    )
    plain = stream(to_unicode({n: c for n, (c, _) in sorted(used.items())}))
    return write(
        new(),
        f"<< /Type /Font /Subtype /Type0 /BaseFont /{name} /Encoding /Identity-H "
        f"/DescendantFonts [{inner} 0 R] /ToUnicode {plain} 0 R >>",
    )


def cut_face(characters: list[str], *, bold: bool) -> bytes:
    """Keep the glyphs of some characters, under their old numbers.

    Returns
    -------
    bytes
        A TrueType file
    """
    options = subset.Options(
        retain_gids=True, hinting=False, layout_features=[], notdef_outline=True
    )
    options.drop_tables += ["GSUB", "GPOS", "GDEF", "kern", "name", "post", "FFTM", "gasp"]
    font = subset.load_font(str(face_file(bold)), options)
    # The time of writing must not enter the file.
    font.recalcTimestamp = False
    cutter = subset.Subsetter(options)
    cutter.populate(text="".join(characters) or " ")
    cutter.subset(font)
    made = BytesIO()
    font.save(made)
    return made.getvalue()


def to_unicode(characters: dict[int, str]) -> bytes:
    """Map glyph numbers back to characters, for search and copying (ISO 32000-1, 9.10.3).

    Parameters
    ----------
    characters : dict
        From the number of a glyph to its character

    Returns
    -------
    bytes
        A CMap
    """
    rows = [f"<{n:04x}> <{c.encode('utf-16-be').hex()}>" for n, c in characters.items()]
    blocks = [rows[k : k + 100] for k in range(0, len(rows), 100)]
    body = "\n".join(
        f"{len(block)} beginbfchar\n" + "\n".join(block) + "\nendbfchar" for block in blocks
    )
    return (
        "/CIDInit /ProcSet findresource begin 12 dict begin begincmap\n"
        "/CMapName /boomsim def /CMapType 2 def\n"
        "1 begincodespacerange <0000> <ffff> endcodespacerange\n"
        f"{body}\nendcmap CMapName currentdict /CMap defineresource pop end end\n"
    ).encode("ascii")
