"""A few of the fuzzers' trials in every run: see `tests/fuzz/`, which try many more by hand."""

import sys
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

FUZZ = str(Path(__file__).parents[1] / "fuzz")
if FUZZ not in sys.path:
    sys.path.append(FUZZ)

import answers  # noqa: E402 from the folder above
import blueprints  # noqa: E402
import command_line  # noqa: E402
import machine_files  # noqa: E402
from drawn import Drawn  # noqa: E402

few = settings(max_examples=30, suppress_health_check=list(HealthCheck))


@pytest.mark.slow
@given(data=st.data())
@few
def test_any_command_line_is_answered_or_refused(data: st.DataObject) -> None:
    command_line.trial(Drawn(data))


@pytest.mark.slow
@given(data=st.data())
@few
def test_any_machine_file_is_used_or_refused(data: st.DataObject) -> None:
    machine_files.trial(Drawn(data))


@pytest.mark.slow
@given(data=st.data())
@few
def test_any_answers_and_any_key_are_marked_or_refused(data: st.DataObject) -> None:
    answers.trial(Drawn(data))


@pytest.mark.slow
@given(data=st.data())
@few
def test_any_blueprint_is_set_or_refused(data: st.DataObject) -> None:
    blueprints.trial(Drawn(data))
