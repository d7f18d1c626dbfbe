"""QTI packages: valid by the official schemas where to hand, and by our own look always."""

import io
import zipfile
from pathlib import Path
from typing import Any

import pytest

from boomsim.papers.blueprint import make_blueprint
from boomsim.papers.paper import Paper, make_paper
from boomsim.papers.qti.check import package_complaints
from boomsim.papers.qti.package import qti_package
from boomsim.papers.registry import families

SCHEMAS = Path(__file__).parents[3] / "shared" / "qti"
EVERY = list(families())


def paper(form: str, units: str) -> Paper:
    plan = {
        "title": "All <families> & more", "minutes": 60, "units": units, "form": form,
        "part": [{"families": EVERY, "questions": len(EVERY)}],
    }  # fmt: skip
    return make_paper(make_blueprint(plan), variant=0)


@pytest.fixture(scope="module", params=[("mixed", "metric"), ("choice", "us")], ids=str)
def package(request: pytest.FixtureRequest) -> bytes:
    return qti_package(paper(*request.param))


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


def test_packages_are_valid_by_the_official_schemas(
    package: bytes, schemas: tuple[Any, Any]
) -> None:
    etree = pytest.importorskip("lxml.etree")
    item, manifest = schemas
    checked = 0
    for name, text in contents(package).items():
        if name.endswith(".xml"):
            schema = manifest if name == "imsmanifest.xml" else item
            assert schema.validate(etree.fromstring(text)), f"{name}: {schema.error_log.last_error}"
            checked += 1
    assert checked == len(EVERY) + 2


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


ITEM = make_paper(
    make_blueprint({"title": "x", "minutes": 5, "part": [
        {"families": ["statics_pad_force"], "questions": 1},
        {"families": ["strategy_own_weight"], "questions": 1, "form": "choice"}]}),
    variant=0,
)  # fmt: skip
GOOD = contents(qti_package(ITEM))


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
