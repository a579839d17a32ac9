"""
What is odd about the house's own facts: hours the wrong way round, addresses that reach nobody.
"""

from collections.abc import Iterator

from builder.confirming import odd
from builder.departments.house.description import Address, Contact, House, QuietHours
from builder.pack import Finding
from builder.reading.absent import Absent
from builder.reading.globe import beyond_globe
from builder.reading.problems import shortened

DAY_MIN = 24 * 60
LONGEST_QUIET_MIN = 16 * 60
"""Quiet that lasts longer leaves no day to work in: mostly its ends are the wrong way round."""


def oddities(house: House) -> Iterator[Finding]:
    """Everything that is odd about hours and addresses."""
    for hours in () if isinstance(house.quiet_hours, Absent) else house.quiet_hours:
        yield from quiet_backwards(hours)
    for contact in house.contacts:
        yield from mail_unreachable(contact)
        yield from phone_unreachable(contact)
    for address in house.addresses:
        yield from off_the_globe(address)


def quiet_backwards(hours: QuietHours) -> Iterator[Finding]:
    """Quiet hours that take most of the day, as they do with their ends exchanged."""
    if isinstance(hours.from_, Absent) or isinstance(hours.until, Absent):
        return
    long_min = (hours.until.minutes - hours.from_.minutes) % DAY_MIN or DAY_MIN
    if long_min <= LONGEST_QUIET_MIN:
        return
    whole, rest = divmod(round(long_min), 60)
    length = f"{whole} h {rest} min" if rest else f"{whole} h"
    yield odd(
        "quiet-hours-long",
        f"The quiet hours of {hours.days} go from {hours.from_.text} until {hours.until.text}:"
        f" {length}.",
        hours.where("from"),
        question=f" Is it from {hours.until.text} until {hours.from_.text}?",
        asks_about=f"{hours.from_.text} until {hours.until.text}",
        subject="house.quiet",
    )


def mail_unreachable(contact: Contact) -> Iterator[Finding]:
    """A mail address that is none."""
    mail = contact.mail
    if mail is None:
        return
    before, _, after = mail.partition("@")
    if not before or not after or "@" in after or " " in mail:
        yield odd(
            "mail-unreachable",
            f"The mail address of {contact.role} is {shortened(mail)}, and no mail goes there: it"
            " needs one @ with a name before it and a host behind it.",
            contact.where("mail"),
            asks_about=mail,
            subject="house.contact",
        )


def phone_unreachable(contact: Contact) -> Iterator[Finding]:
    """A telephone number without a digit."""
    if contact.phone is not None and not any(char.isdigit() for char in contact.phone):
        yield odd(
            "phone-unreachable",
            f"The telephone number of {contact.role} is {shortened(contact.phone)}, which has no"
            " digit.",
            contact.where("phone"),
            asks_about=contact.phone,
            subject="house.contact",
        )


def off_the_globe(address: Address) -> Iterator[Finding]:
    """A position that is nowhere on earth."""
    why = beyond_globe(address.position) if address.position else ""
    if address.position and why:
        yield odd(
            "position-off-globe",
            f"The position of the address for {address.use} is {shortened(address.position)}, and"
            f" {why}.",
            address.where("position"),
            question=" Are latitude and longitude exchanged, or is the decimal point missing?",
            asks_about=address.position,
            subject="house.address",
        )
