"""What people of a crew can do, as houses list them and shows ask for them."""

from typing import Literal

Skill = Literal[
    "stagehands",
    "loaders",
    "riggers",
    "flymen",
    "electricians",
    "light desk",
    "sound engineers",
    "video engineers",
    "followspots",
    "wardrobe",
    "carpenters",
    "props",
    "forklift drivers",
    "stage managers",
    "technicians",
    "runners",
    "security",
    "first aiders",
    "fire watchers",
    "cleaners",
]
