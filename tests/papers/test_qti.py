"""QTI packages: valid by the official schemas where to hand, and by our own look always.

The schema of QTI 3 was not to be had. Its packages are held against a converter that is not ours
(``citolab-qti-convert``, read by its own documentation as a port of the standard's own upgrader):
our QTI 2.2 raised by it must be our QTI 3, and our QTI 3 brought down by it must be valid by the
schema of QTI 2.2. Players that are not ours play both, see ``tests/browser/test_qti_players.py``.
"""

import io
import re
import xml.etree.ElementTree as ElementTree
import zipfile
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from boomsim.papers.blueprint import make_blueprint
from boomsim.papers.family_registry import families
from boomsim.papers.paper import Paper, make_paper
from boomsim.papers.qti.qti_check import package_complaints
from boomsim.papers.qti.qti_package import qti_package
from boomsim.papers.qti.qti_versions import QTI_3, QTI_22, Version, plain

SCHEMAS = Path(__file__).parents[3] / "shared" / "qti"
EVERY = list(families())
CHOICE = [name for name in EVERY if not getattr(families()[name], "by_check", False)]


def paper(form: str, units: str) -> Paper:
    names = CHOICE if form == "choice" else EVERY
    plan = {
        "title": "All <families> & more", "minutes": 60, "units": units, "form": form,
        "feedback": "at the end" if form == "mixed" else "never",
        "part": [{"families": names, "questions": len(names)}],
    }  # fmt: skip
    return make_paper(make_blueprint(plan), variant=0)


WAYS = [("mixed", "metric"), ("choice", "us")]


@cache
def packed_as(way: tuple[str, str], version: Version) -> bytes:
    return qti_package(paper(*way), version=version)


@pytest.fixture(scope="module", params=WAYS, ids=str)
def way(request: pytest.FixtureRequest) -> tuple[str, str]:
    return request.param


@pytest.fixture(scope="module", params=[QTI_22, QTI_3], ids=lambda version: version.name)
def package(request: pytest.FixtureRequest, way: tuple[str, str]) -> bytes:
    return packed_as(way, request.param)


def contents(package: bytes) -> dict[str, bytes]:
    with zipfile.ZipFile(io.BytesIO(package)) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def packed(files: dict[str, bytes]) -> bytes:
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w") as archive:
        for name, content in files.items():
            archive.writestr(name, content)
    return buffer.getvalue()


@pytest.fixture(scope="module")
def schemas() -> tuple[Any, Any]:
    """Of items and tests, and of the manifest; they take seconds to load."""
    if not SCHEMAS.is_dir():
        pytest.skip("the official QTI schemas are not at ../shared/qti")
    etree = pytest.importorskip("lxml.etree")
    return (
        etree.XMLSchema(etree.parse(str(SCHEMAS / "qtiv2p2p4" / "imsqti_v2p2p4.xsd"))),
        etree.XMLSchema(etree.parse(str(SCHEMAS / "imscp_v1p1.xsd"))),
    )


def converted(way: tuple[str, str], version: Version) -> dict[str, bytes]:
    """Our package, turned into the other version by a converter that is not ours."""
    converter = pytest.importorskip("qti_convert")
    files = contents(packed_as(way, version))
    if version is QTI_22:
        # Nothing of its own: no optional improvements of what we wrote.
        made = converter.upgrade_package_files(files, item_transforms=[])
        return dict(getattr(made, "files", made))
    made = converter.downgrade_package_files(files)
    assert [one.message for one in made.warnings if '"use"' not in one.message] == []
    return dict(made.files)


@pytest.mark.parametrize("version", [QTI_22, QTI_3], ids=lambda version: version.name)
def test_packages_are_valid_by_the_official_schemas(
    way: tuple[str, str], version: Version, schemas: tuple[Any, Any]
) -> None:
    """QTI 3 after it has been brought down to QTI 2.1, which is a part of QTI 2.2."""
    etree = pytest.importorskip("lxml.etree")
    item, manifest = schemas
    checked = 0
    files = contents(packed_as(way, version)) if version is QTI_22 else converted(way, version)
    for name, text in files.items():
        if version is QTI_3 and isinstance(text, str):
            text = text.encode()
        text = text.replace(b"imsqti_v2p1", b"imsqti_v2p2")
        if name.endswith(".xml"):
            schema = manifest if name == "imsmanifest.xml" else item
            assert schema.validate(etree.fromstring(text)), f"{name}: {schema.error_log.last_error}"
            checked += 1
    assert checked in (len(EVERY) + 2, len(CHOICE) + 2)


def tree(text: bytes | str) -> list[object]:
    """Names, attributes and texts of a document, without notes to programs and to schemas."""
    etree = pytest.importorskip("lxml.etree")
    root = etree.fromstring(text.encode() if isinstance(text, str) else text)

    def told(one: Any) -> list[object]:
        marks = sorted((k, v) for k, v in one.attrib.items() if not k.endswith("schemaLocation"))
        inner = [told(child) for child in one if isinstance(child.tag, str)]
        return [one.tag, marks, (one.text or "").strip(), inner, (one.tail or "").strip()]

    return told(root)


@pytest.mark.slow
def test_qti_3_is_what_a_converter_that_is_not_ours_makes_of_our_qti_22(
    way: tuple[str, str],
) -> None:
    theirs, ours = converted(way, QTI_22), contents(packed_as(way, QTI_3))
    assert theirs.keys() == ours.keys()
    for name, text in ours.items():
        if name.endswith(".xml"):
            assert tree(theirs[name]) == tree(text), name


def test_both_versions_are_one_tree(way: tuple[str, str]) -> None:
    old, new = (contents(packed_as(way, version)) for version in (QTI_22, QTI_3))
    for name in [one for one in new if one.startswith("items/") and one.endswith(".xml")]:
        first, second = (plain(ElementTree.fromstring(one[name])) for one in (old, new))
        for one in (first, second):
            one.attrib = {k: v for k, v in one.attrib.items() if "schemaLocation" not in k}
        assert ElementTree.tostring(first) == ElementTree.tostring(second)


def test_packages_pass_our_own_look(package: bytes) -> None:
    assert package_complaints(package) == []


def test_the_same_paper_gives_the_same_bytes() -> None:
    assert qti_package(paper("mixed", "metric")) == qti_package(paper("mixed", "metric"))


def test_the_caution_goes_with_the_package(package: bytes) -> None:
    assert b"not for planning a lift" in contents(package)["test.xml"]


def test_a_platform_is_not_said_to_carry_errors_forward(package: bytes) -> None:
    text = contents(package)["test.xml"].decode()
    assert "carries forward" not in text
    assert "exactly one is right" in text


TWO = {
    "title": "x", "minutes": 5, "variants": 2,
    "part": [{"families": ["statics_pad_force"], "questions": 1},
             {"families": ["strategy_own_weight"], "questions": 1, "form": "choice"}],
}  # fmt: skip


def two(variant: int = 0, **changes: object) -> dict[str, bytes]:
    return contents(qti_package(make_paper(make_blueprint(TWO | changes), variant=variant)))


GOOD = two(feedback="at once")


def names(files: dict[str, bytes]) -> set[str]:
    """What a platform may file a package, its test and its items under."""
    xml = b"".join(text for name, text in files.items() if name.endswith(".xml"))
    tags = rb"<(?:manifest|assessmentTest|assessmentItem|resource)\b[^>]*? identifier=\"([^\"]+)\""
    return {found.decode() for found in re.findall(tags, xml)}


def test_no_identifier_comes_again_in_another_variant_or_sitting() -> None:
    packages = [two(0), two(1), two(0, seed="other"), two(0, units="us")]
    found = [names(one) for one in packages]
    assert all(len(one) == 7 for one in found)  # manifest, test, two items and three resources
    assert len(set.union(*found)) == sum(map(len, found))


def test_no_solution_is_in_a_package_unless_the_blueprint_says_so() -> None:
    """A solution in the package can be read by who opens it, whatever the platform shows."""
    text = b"".join(two().values())
    for word in (b"modalFeedback", b"perhaps you", b"FEEDBACK", b"formula-1"):
        assert word not in text
    assert b'showFeedback="false"' in text


@pytest.mark.parametrize(
    ("feedback", "submission"), [("at the end", b"simultaneous"), ("at once", b"individual")]
)
def test_solutions_come_when_the_blueprint_lets_them(feedback: str, submission: bytes) -> None:
    files = two(feedback=feedback)
    assert b'submissionMode="%s"' % submission in files["test.xml"]
    assert b'showFeedback="true"' in files["test.xml"]
    assert b"perhaps you" in files["items/q01.xml"]
    assert package_complaints(packed(files)) == []


@pytest.mark.parametrize(
    ("name", "old", "new", "said"),
    [
        ("q01", b'baseType="float">', b'baseType="float">0,', "decimal point"),
        ("q01", b"<gte>", b"<lt>", "no band"),
        ("q01", b'"RESPONSE_2" cardinality', b'"OTHER" cardinality', "not declared"),
        ("q01", b'Identifier="RESPONSE_3"', b'Identifier="RESPONSE_1"', "not asked"),
        ("q01", b"<correctResponse><value>", b"<correctResponse><value>9999", "is not between"),
        ("q01", b'alt="', b'alt="" title="', "alternative text"),
        ("q01", b"q01-figure.svg", b"q99-figure.svg", "not in the package"),
        ("q02", b"<correctResponse><value>", b"<correctResponse><value>Q", "not offered"),
        ("q02", b'<simpleChoice identifier="B"', b'<simpleChoice identifier="A"', "one identifier"),
    ],
)  # fmt: skip
def test_what_schemas_do_not_catch_is_caught(name: str, old: bytes, new: bytes, said: str) -> None:
    path = f"items/{name}.xml"
    assert old in GOOD[path]
    text = GOOD[path].replace(old, new)
    if new == b"<lt>":
        text = text.replace(b"</gte>", b"</lt>")
    found = package_complaints(packed(GOOD | {path: text}))
    assert any(said in words for words in found)


def test_files_and_manifest_belong_together() -> None:
    missing = {name: text for name, text in GOOD.items() if name != "items/q01.xml"}
    assert any("not there" in words for words in package_complaints(packed(missing)))
    assert any("not listed" in words for words in package_complaints(packed(GOOD | {"x.svg": b""})))
