"""Who sets up and checks when: the pieces of work before doors, and what the acts leave open."""

from builder.fit.clock.acts import agreed_check
from builder.fit.clock.records import Act, Piece
from builder.fit.clock.sentences import (
    ACT_ASKED,
    ASK_CHECK,
    ASK_CLEAR,
    ASK_SET_UP,
    ASK_SET_UP_BEHIND,
    ASK_TRUCK,
)
from builder.fit.sentences import fill

SET_UP = "set-up"
LINE_CHECK = "line check"
CHECK = "check"
CLEARING = "clearing the deck"


def act_asked(act: str, question: str) -> str:
    """A question to an act, by its name."""
    return fill(ACT_ASKED, {"act": act, "question": question})


def may_be_heard(act: Act) -> bool:
    """
    Whether an act has a check that quiet hours could stop: one of a stated or an unknown length.
    """
    line_check_s = act["clock"]["line check"]
    return act["clock"]["check"] != 0 or (line_check_s is not None and line_check_s > 0)


def questions_to(acts: list[Act]) -> list[str]:
    """What the acts leave open, as questions, who checks first before the others."""
    questions: list[str] = []
    for index in reversed(range(len(acts))):
        act, clock = acts[index]["act"], acts[index]["clock"]
        if clock["load in"] is None:
            questions.append(act_asked(act, ASK_TRUCK))
        if clock["set up"] is None and clock["check from"] is None:
            is_first = index == len(acts) - 1
            questions.append(act_asked(act, ASK_SET_UP if is_first else ASK_SET_UP_BEHIND))
        if clock["check"] is None:
            questions.append(act_asked(act, ASK_CHECK))
        if clock["clear after check"] is None and index > 0:
            questions.append(act_asked(act, ASK_CLEAR))
    return questions


def all_pieces(acts: list[Act]) -> list[Piece]:
    """The work of all acts: the last act on checks first, so that its backline stays."""
    pieces: list[Piece] = []
    for index in reversed(range(len(acts))):
        pieces.extend(pieces_of(acts[index], index > 0))
    return pieces


def pieces_of(act: Act, followed: bool) -> list[Piece]:
    """An act's work before doors; clearing the deck only where another act sets up after it."""
    clock = act["clock"]
    agreed_s = agreed_check(act)
    set_up = blank_piece(act, SET_UP, clock["set up"])
    set_up["not_before_s"] = clock["load in"]
    set_up["until_s"] = agreed_s
    pieces = [set_up]
    if clock["line check"] is not None:
        pieces.append(check_piece(act, LINE_CHECK, clock["line check"], agreed_s))
        agreed_s = None
    pieces.append(check_piece(act, CHECK, clock["check"], agreed_s))
    if followed:
        pieces.append(blank_piece(act, CLEARING, clock["clear after check"]))
    return pieces


def blank_piece(act: Act, what: str, length_s: float | None) -> Piece:
    """A piece of an act's work that a meal may break."""
    return {
        "what": what,
        "whose": act["act"],
        "length_s": length_s,
        "not_before_s": None,
        "until_s": None,
        "at_s": None,
        "splits": True,
    }


def check_piece(act: Act, what: str, length_s: float | None, at_s: float | None) -> Piece:
    """A check, at its agreed time where there is one."""
    return {**blank_piece(act, what, length_s), "at_s": at_s, "splits": False}
