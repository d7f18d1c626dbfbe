"""A vote: who is counted, and what may be seen of it when."""

import json

from served_class import QUESTIONS

from boomsim.classroom.votes.ballot import Ballot
from boomsim.classroom.votes.rate_limit import MOST_KNOWN, RateLimit

QUESTION, OTHER = QUESTIONS
RIGHT = QUESTION.right.letter
WRONG = next(one.letter for one in QUESTION.options if not one.right)


def opened():
    ballot = Ballot()
    ballot.open(QUESTION)
    return ballot


def test_the_last_letter_of_each_voter_counts_and_only_while_the_vote_is_open():
    ballot = opened()
    assert ballot.vote("one", WRONG, round=1)
    assert ballot.vote("one", RIGHT, round=1)
    assert ballot.vote("two", RIGHT, round=1)
    assert (ballot.counts[RIGHT], ballot.counts[WRONG]) == (2, 0)
    ballot.close()
    assert not ballot.vote("three", RIGHT, round=1)
    assert sum(ballot.counts.values()) == 2


def test_a_letter_that_is_no_answer_and_a_vote_for_an_earlier_round_are_not_counted():
    ballot = opened()
    for letter in ("Z", "", "AB", RIGHT.lower()):
        assert not ballot.vote("one", letter, round=1)
    ballot.open(OTHER)
    assert not ballot.vote("one", OTHER.right.letter, round=1)
    assert ballot.votes == {}


def test_nobody_sees_a_count_before_it_is_shown_or_an_answer_before_it_is_told():
    ballot = opened()
    ballot.vote("a voter's number", WRONG, round=1)
    hidden = [QUESTION.reason, *(one.thought for one in QUESTION.options if one.thought)]
    for act in (lambda: None, ballot.close):
        act()
        seen = json.dumps(ballot.seen(), ensure_ascii=False)
        assert "counts" not in ballot.seen()
        assert not any(words in seen for words in hidden)
    ballot.show()
    seen = json.dumps(ballot.seen(), ensure_ascii=False)
    assert ballot.seen()["counts"][WRONG] == 1
    assert not any(words in seen for words in hidden)
    ballot.tell()
    seen = ballot.seen()
    assert seen["answer"]["letter"] == RIGHT
    assert seen["answer"]["reason"] == QUESTION.reason
    assert "a voter's number" not in json.dumps(seen)


def test_asked_again_the_votes_before_are_kept_to_compare_and_another_question_starts_anew():
    ballot = opened()
    ballot.vote("one", WRONG, round=1)
    ballot.tell()
    ballot.open(QUESTION)
    assert ballot.seen()["votes"] == 0
    assert not ballot.shown and not ballot.told
    ballot.vote("one", RIGHT, round=2)
    ballot.show()
    assert ballot.seen()["before"][WRONG] == 1
    assert ballot.seen()["counts"][RIGHT] == 1
    ballot.open(OTHER)
    assert ballot.before == {}


def test_a_burst_is_allowed_then_a_steady_rate_and_each_has_a_bucket_of_their_own():
    now = [0.0]
    limit = RateLimit(rate=2.0, burst=3.0, clock=lambda: now[0])
    assert [limit.allows("one") for _ in range(4)] == [True, True, True, False]
    assert limit.allows("two")
    now[0] = 0.5
    assert [limit.allows("one") for _ in range(2)] == [True, False]


def test_who_makes_up_many_names_fills_no_memory():
    limit = RateLimit(rate=1.0, burst=1.0, clock=lambda: 0.0)
    for k in range(3 * MOST_KNOWN):
        limit.allows(str(k))
    assert len(limit._left) == MOST_KNOWN
