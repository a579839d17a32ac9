"""What does not go together in a description of crew: people, calls and rates."""

from collections.abc import Iterator

from builder.departments.crew.description import Crew, Role
from builder.departments.crew.figures import added, ends
from builder.departments.crew.laying_out import times_of
from builder.exchange import CallRules
from builder.pack import Finding, Level, Place
from builder.reading.absent import Absent, listed
from builder.reading.dated import Dated
from builder.reading.in_part import told_as
from builder.reading.money import Money
from builder.reading.quantities import Duration
from builder.reading.written import Written
from builder.stating import Ageing, place


def findings(crew: Crew, rules: CallRules, ageing: Ageing) -> Iterator[Finding]:
    """More people asked for than there are, calls beyond the longest, rates that have ended."""
    roles = {role.name.casefold(): role for role in listed(crew.people)}
    for least in listed(crew.least):
        for needed in () if isinstance(least.people, Absent) else least.people:
            what = f"The least crew for '{least.when}'"
            if needed.for_each is None:
                yield from too_few(what, needed.who, needed.count, roles, needed)
    for day in listed(crew.days):
        for call in day.calls:
            yield from too_few(f"'{day.name}'", call.who, call.count, roles, call)
            at = times_of(call)
            longest = rules.longest
            if at and isinstance(longest, Duration) and at[1] - at[0] > longest.s:
                sentence = (
                    f"'{day.name}' calls {call.who} from {told_as(call.from_)} until"
                    f" {told_as(call.until)}. One crew works {longest.text} at the longest here:"
                    " is a second one called?"
                )
                yield Finding(Level.CAUTION, "call-too-long", sentence, "crew.day", at_of(call))
    for role in roles.values():
        yield from rate_ended(role, ageing)
        yield from without_currency(role)


def too_few(
    what: str, who: str, count: object, roles: dict[str, Role], line: Written
) -> Iterator[Finding]:
    """More of a role than come with the house and can be called."""
    role = roles.get(who.casefold())
    wanted = ends(count)[0]
    most = added([ends(role.there), ends(role.to_call)])[1] if role else None
    if wanted is None or most is None or wanted <= most:
        return
    sentence = (
        f"{what} asks for {wanted:,.0f} of {who}, and there are {most:,.0f} with all that can be"
        " called. Which number is right?"
    )
    yield Finding(Level.CAUTION, "crew-too-few", sentence, "crew.role", at_of(line))


def rate_ended(role: Role, ageing: Ageing) -> Iterator[Finding]:
    """A rate that no longer holds on the day of the revision."""
    until = role.pay.until if role.pay else None
    if not isinstance(until, Dated) or until.last >= ageing.on:
        return
    sentence = f"The rate of {role.name} holds until {until.text}. What does it cost since?"
    where = role.pay.where("until") if role.pay else role.where()
    yield Finding(Level.CAUTION, "rate-ended", sentence, "crew.role", place(where))


def without_currency(role: Role) -> Iterator[Finding]:
    """A rate of which nobody can tell what it is worth."""
    amount = role.pay.amount if role.pay else None
    if not isinstance(amount, Money) or amount.currency:
        return
    sentence = (
        f"The rate of {role.name} tells no currency. Write it with the number, like £17 or 17 EUR."
    )
    where = role.pay.where("amount") if role.pay else role.where()
    yield Finding(Level.CAUTION, "rate-without-currency", sentence, "crew.rate", place(where))


def at_of(line: Written) -> Place | None:
    """Where a line stands."""
    return place(line.where())
