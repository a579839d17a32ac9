"""Why a value cannot be read, in place of an exception."""

from typing import TypedDict


class Fault(TypedDict):
    """
    What is wrong with a value: the reason follows the value in a sentence, the advice says how to
    go on, the code is a heading of the problems page.
    """

    reason: str
    code: str
    advice: str


EMPTY_ADVICE = "write a value, `unknown` if nobody knows it yet, `none`, or leave the key out"


def fault(reason: str, code: str, advice: str = "") -> Fault:
    """A fault."""
    return {"reason": reason, "code": code, "advice": advice}


def empty_fault() -> Fault:
    """The fault of a text that holds nothing."""
    return fault("is empty", "empty-value", EMPTY_ADVICE)


def advised(wrong: Fault, advice: str) -> Fault:
    """The fault with an advice, where it has none of its own."""
    return wrong if wrong["advice"] != "" else fault(wrong["reason"], wrong["code"], advice)
