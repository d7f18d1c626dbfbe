"""The class server over real HTTP: what it gives out, what it counts, and what it refuses."""

import asyncio
import json
import sys

import pytest
from served_class import CRANE, QUESTIONS, TOKEN, run

from boomsim.caution import CAUTION
from boomsim.classroom.votes import class_server, vote_room
from boomsim.classroom.votes.static_site import folder_pages
from boomsim.cli import parser
from boomsim.figures.qr_code import qr_svg

KEY, RIGHT = QUESTIONS[0].key, QUESTIONS[0].right.letter
PAGES = ("", "board", "instructor")


def test_unless_it_is_told_otherwise_only_this_machine_is_let_in():
    assert parser().parse_args(["class"]).address == "127.0.0.1"


def test_a_class_votes_sees_the_distribution_and_then_the_answer():
    async def act(served):
        assert (await served.control("open", KEY)).code == 200
        voters = [served.joined() for _ in range(3)]
        for voter, letter in zip(voters, (RIGHT, "A", "B"), strict=True):
            vote = {"id": voter, "letter": letter, "round": 1}
            assert (await served.post("vote", vote)).code == 200
        known = json.loads((await served.control("look")).body)
        assert sum(known["counts"].values()) == 3
        assert known["answer"]["letter"] == RIGHT
        assert "counts" not in json.loads(served.room.seen())
        await served.control("tell")
        assert json.loads(served.room.seen())["answer"]["letter"] == RIGHT
        late = await served.post("vote", {"id": voters[0], "letter": "A", "round": 1})
        assert late.code == 409

    run(act)


def test_news_come_by_a_stream_and_a_page_that_comes_back_keeps_its_number():
    async def act(served):
        got = []

        def hear(piece):
            got.append(piece.decode())

        stream = asyncio.ensure_future(
            served.client.fetch(f"{served.base}/events", streaming_callback=hear, request_timeout=0)
        )
        while "event: seen" not in "".join(got):
            await asyncio.sleep(0.02)
        assert served.room.here == 1
        await served.control("open", KEY)
        while '"phase": "open"' not in "".join(got):
            await asyncio.sleep(0.02)
        voter = json.loads("".join(got).split("data: ")[1].split("\n")[0])
        assert served.room.join(voter)[0] == voter
        assert served.room.join("made up")[0] != "made up"
        stream.cancel()

    run(act)


def test_the_instructors_requests_want_the_token():
    async def act(served):
        for token in ("", "x", TOKEN[:-1], f"{TOKEN}x", "\u00e9"):
            assert (await served.control("open", KEY, token=token)).code == 401
            answer = await served.control("look", token=token)
            assert answer.code == 401
            assert b"answer" not in answer.body
        assert served.room.ballot.question is None

    run(act)


@pytest.mark.parametrize("path", ["vote", "control"])
def test_what_is_no_small_json_of_the_pages_own_is_refused(path):
    async def act(served):
        token = {"Authorization": f"Bearer {TOKEN}"}
        plain = {"Content-Type": "text/plain"} | token  # as another site's form would send it
        answer = await served.ask(path, method="POST", body='{"do": "tell"}', headers=plain)
        assert answer.code == 400
        for body in ("", "[]", "3", "nonsense", "[" * 400):
            assert (await served.post(path, body, **token)).code == 400
        big = await served.post(path, json.dumps({"id": "x" * 600}), **token)
        assert big.code in (400, 413, 599)  # 599: the connection was ended before an answer
        assert (await served.ask(path)).code == 405

    run(act)


def test_a_vote_of_nobody_or_of_the_wrong_kind_is_not_counted():
    async def act(served):
        await served.control("open", KEY)
        voter = served.joined()
        for vote in (
            {"id": "made up", "letter": RIGHT, "round": 1},
            {"id": voter, "letter": "<b>", "round": 1},
            {"id": voter, "letter": RIGHT, "round": 2},
            {"id": voter, "letter": [RIGHT], "round": 1},
            {"id": voter, "letter": RIGHT, "round": "1"},
            {},
        ):
            assert (await served.post("vote", vote)).code in (400, 409)
        assert served.room.ballot.votes == {}

    run(act)


def test_who_votes_too_often_is_told_to_wait():
    async def act(served):
        await served.control("open", KEY)
        vote = {"id": served.joined(), "letter": RIGHT, "round": 1}
        codes = [(await served.post("vote", vote)).code for _ in range(20)]
        assert codes[0] == 200
        assert 429 in codes
        other = {"id": served.joined(), "letter": RIGHT, "round": 1}
        assert (await served.post("vote", other)).code == 200

    run(act)


def test_every_answer_keeps_browsers_on_a_short_lead_and_sets_no_cookie():
    async def act(served):
        for path in (*PAGES, "vote.js", "vote.css", "nowhere", "vote", "crane"):
            answer = await served.ask(path)
            policy = answer.headers["Content-Security-Policy"]
            assert "default-src 'none'" in policy
            assert answer.headers["X-Content-Type-Options"] == "nosniff"
            assert answer.headers["Referrer-Policy"] == "no-referrer"
            assert "Set-Cookie" not in answer.headers
            if path in PAGES:
                assert "unsafe" not in policy
                assert "frame-ancestors 'none'" in policy
                assert CAUTION.encode() in answer.body.replace(b"&#x27;", b"'")
                assert b"style=" not in answer.body and b"onclick" not in answer.body

    run(act)


@pytest.mark.parametrize(
    "path",
    [
        "../pyproject.toml",
        "..%2f..%2fetc/passwd",
        "lessons/../../etc/passwd",
        "%2e%2e/",
        "student.html",
        "vote_server.py",
        "lessons/",
    ],
)
def test_no_request_reaches_a_file(path):
    async def act(served):
        assert (await served.ask(path)).code == 404

    run(act)


def test_the_crane_is_given_out_and_not_again_to_who_has_it():
    async def act(served):
        first = await served.ask("crane")
        assert first.body == CRANE
        again = await served.ask("crane", headers={"If-None-Match": first.headers["Etag"]})
        assert again.code == 304

    run(act)


def test_the_picture_is_that_of_the_question_asked_and_there_is_none_before():
    async def act(served):
        assert (await served.ask("picture")).code == 404
        await served.control("open", KEY)
        answer = await served.ask("picture?02-guess-1")
        assert b"<svg" in answer.body
        assert answer.headers["Content-Type"] == "image/svg+xml"

    run(act)


def test_a_full_room_says_so_and_lets_in_whoever_comes_after_somebody_left(monkeypatch):
    async def act(served):
        monkeypatch.setattr(vote_room, "MOST_PAGES", 2)
        pages = [served.room.join("")[1] for _ in range(2)]
        assert (await served.ask("events")).code == 503
        served.room.leave(pages[0])
        served.room.join("")

    run(act)


def test_a_folder_that_holds_no_lessons_is_refused(tmp_path):
    with pytest.raises(ValueError, match=r"no index\.html"):
        folder_pages(tmp_path)
    (tmp_path / "index.html").write_text("x")
    (tmp_path / "secret.txt").write_text("x")
    assert set(folder_pages(tmp_path)) == {"lessons/", "lessons/index.html"}


def test_the_address_that_a_class_opens_is_one_that_a_phone_can_reach():
    assert class_server.joining("192.0.2.7", 8866) == "http://192.0.2.7:8866/"
    assert class_server.joining("::1", 80) == "http://[::1]:80/"
    assert "0.0.0.0" not in class_server.joining("0.0.0.0", 8866)


def test_a_code_stands_on_the_board_where_segno_is_installed_and_only_words_without(monkeypatch):
    pytest.importorskip("segno")
    assert qr_svg("http://192.0.2.7:8866/").startswith("<svg")
    for name in ("segno", "segno.encoder"):
        monkeypatch.setitem(sys.modules, name, None)
    monkeypatch.setattr(class_server, "find_spec", lambda name: None)
    assert qr_svg("http://192.0.2.7:8866/") == ""
    assert class_server.code_lines("http://192.0.2.7:8866/") == ""
