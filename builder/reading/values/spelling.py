"""Characters: white space folded, and typographic signs in the form that a keyboard has."""

SPACES = (
    " \t\n\x0b\x0c\r\x1c\x1d\x1e\x1f\x85\xa0\u1680"
    "\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a"
    "\u2028\u2029\u202f\u205f\u3000"
)
"""White space as Unicode has it: the two languages do not agree on it by themselves."""
DIGITS = "0123456789"
LETTERS = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
VULGAR = {
    "½": "1/2",
    "¼": "1/4",
    "¾": "3/4",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
    "⅓": "1/3",
    "⅔": "2/3",
}
SIGNS = {"′": "'", "’": "'", "″": '"', "”": '"', "“": '"', "−": "-", "²": "2", "³": "3"}
"""Primes, minus and raised digits, each with its sign on the keyboard."""


def is_digit(char: str) -> bool:
    """Whether a character is a digit from 0 to 9."""
    return char != "" and DIGITS.find(char) >= 0


def is_letter(char: str) -> bool:
    """Whether a character is one of the 26 letters, small or not."""
    return char != "" and LETTERS.find(char) >= 0


def folded(text: str) -> str:
    """The text with every run of white space as one space, and none at the ends."""
    words: list[str] = []
    word: list[str] = []
    for char in text:
        if SPACES.find(char) < 0:
            word.append(char)
        elif len(word) > 0:
            words.append("".join(word))
            word = []
    if len(word) > 0:
        words.append("".join(word))
    return " ".join(words)


def plain(text: str) -> str:
    """Folded text with typographic signs and vulgar fractions in their keyboard form."""
    chars: list[str] = []
    before = ""
    for char in text:
        if char in VULGAR:
            chars.append(f" {VULGAR[char]}" if is_digit(before) else VULGAR[char])
        else:
            chars.append(SIGNS.get(char, char))
        before = char
    return folded("".join(chars)).replace("''", '"')


def run_of(text: str, start: int, wanted: str) -> str:
    """The characters from a place on that are among those wanted."""
    end = start
    while end < len(text) and wanted.find(text[end]) >= 0:
        end += 1
    return text[start:end]


def with_commas(number: int) -> str:
    """A whole number from 0 up with a comma at every three digits."""
    digits = str(number)
    words = digits[-3:]
    rest = digits[:-3]
    while rest != "":
        words = f"{rest[-3:]},{words}"
        rest = rest[:-3]
    return words
