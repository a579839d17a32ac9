"""
Text that tries to be more than text.

Written for this project from the ways such attacks are described in OWASP's cheat sheets.
"""

from builder.document import (
    Block,
    Bullets,
    Caution,
    Entry,
    Facts,
    Folded,
    Heading,
    Headline,
    Link,
    Markup,
    Paragraph,
    Photo,
    Picture,
    Row,
    Small,
    Strong,
    Table,
    Tag,
)

SVG = Markup(
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 3">\n\n<path d="M0 0L4 3"/></svg>'
)

HOSTILE = (
    "<script>window.__hostile = 1</script>",
    "<img src=x onerror='window.__hostile = 2'>",
    '"><svg onload=window.__hostile=3>',
    "' onmouseover='window.__hostile=4",
    "</td></tr></table><h1>out of the table</h1>",
    "</title><script>window.__hostile=5</script>",
    "--><script>window.__hostile=6</script><!--",
    "[press here](javascript:window.__hostile=7)",
    "![picture](https://example.org/x.png)",
    "<https://example.org/auto>",
    "https://example.org/bare",
    "[ref]: https://example.org 'title'",
    "**strong** _em_ `code` ~~gone~~ ==mark== ^^ins^^",
    "# heading",
    "1. one",
    "- bullet",
    "> quote",
    "    indented code",
    "```python\nprint(1)\n```",
    "| a | b |\n|---|---|\n| 1 | 2 |",
    '!!! danger "admonition"',
    "{: #planted onclick=alert(1) }",
    "{{ config.site_name }} {% raw %} {# gone #}",
    "{{ ''.__class__.__mro__ }}",
    '--8<-- "/etc/passwd"',
    "../../../etc/passwd",
    "..\\..\\windows",
    "file:///etc/passwd",
    "&lt;b&gt; &amp; &#60; &copy;",
    "a\u202egnp.exe",
    "\u2067right\u2069 \u200fmark\u200b\ufeff",
    "nul\x00 stx\x02wzxhzdk:0\x03 esc\x1b[31m bell\x07",
    "line\nbreak\r\n\ttab\u2028separator",
    "*[HTML]: abbreviation",
    "[^1] footnote [^1]: text",
    ":smile: :material-account:",
    "$$x^2$$ \\(y\\)",
    "title: x\n---\n# broken front matter",
    "!!python/object/apply:os.system ['true']",
    "<!--",
    "<![CDATA[ x ]]>",
    "<?php echo 1 ?>",
    "<details open ontoggle=window.__hostile=8>",
    "<math><mtext></mtext><style><img src=x onerror=window.__hostile=9>",
    "javascript:alert(1)//",
    "\\<b\\> \\*x\\*",
    "שלום עולם (1,000 kg) مرحبا",
    "é ﷽ 日本語 🎛️",
)


def everywhere(text: str, page: str = "rigging") -> tuple[Block, ...]:
    """The text in each place a block has for text."""
    words = (text, Strong(text), Small(text), Tag(text, "danger"), Link(text, page, "here"))
    entry = Entry(text, words, words, "entry")
    return (
        Heading(2, text, "here"),
        Heading(3, text),
        Paragraph(text),
        Paragraph(words),
        Bullets((text, words)),
        Table(
            (text, text), (Row((text, words), "row"),), summary=text, numeric=(1,), sortable=True
        ),
        Facts((entry,)),
        Headline((Entry(text, text, text, f"{page}#here"),)),
        Picture("plan", SVG, text, text),
        Picture("field", SVG, text, text, inline=False, dark=SVG),
        Photo("dock.jpg", text, text),
        Caution(words, text, "danger"),
        Folded(
            text,
            (Paragraph(words), Bullets((text,)), Table((text,), (Row((text,)),)), Heading(4, text)),
            "folded",
        ),
    )
