"""What a show may ask of the stage: deck, wings, loads, risers, barrier."""

from functools import partial

from builder.rules import IS, NUMBERS, Rule

stage = partial(Rule, department="stage", section="stage")
deck = partial(stage, item="deck")


def wing(side: str, size: str, title: str) -> Rule:
    """One side's wing, by its width, depth or height."""
    return stage(
        key=f"wing {size} {side}",
        title=title,
        kind="length",
        item="wing",
        value="clear_height" if size == "height" else size,
        legal=size == "height",
        where=(("name", side),),
        question=(
            f"How large is the wing {side}, clear of what stands in it, and is it level with the"
            " deck?"
        ),
        remedy=(
            "Use the other wing, or stack lower."
            if size == "height"
            else "Use the other wing, or set up on the deck."
        ),
        who="the show",
    )


def furnished(kind: str, key: str, title: str, question: str, remedy: str) -> Rule:
    """How many the house has of one kind of furnishing."""
    return stage(
        key=key,
        title=title,
        kind="count",
        item="furnishing",
        value="count",
        where=(("kind", kind),),
        combine="sum",
        day="shared",
        question=question,
        remedy=remedy,
        who="the show, or hire",
    )


SOFT = "Bring or hire them, flame retardant by the local rules."
FURNISHED = (
    furnished("leg", "legs", "Legs", "How many legs are there, of what size and colour?", SOFT),
    furnished(
        "border", "borders", "Borders", "How many borders are there, of what size and colour?", SOFT
    ),
    furnished(
        "cyclorama",
        "cycloramas",
        "Cycloramas",
        "Is there a cyclorama, of what size and colour, with a seam or without?",
        SOFT,
    ),
    furnished(
        "backdrop", "backdrops", "Drops", "Which drops are there, of what size and colour?", SOFT
    ),
    furnished(
        "scrim", "scrims", "Scrims and gauzes", "Which gauzes are there, of what size?", SOFT
    ),
    furnished(
        "traveller",
        "travellers",
        "Travellers",
        "Which curtains run on a track, how wide, and from where do they open?",
        SOFT,
    ),
    furnished(
        "dance floor",
        "dance floor rolls",
        "Rolls of dance floor",
        "How many rolls of dance floor are there, of what length, width and colours?",
        "Bring or hire a dance floor and its tape.",
    ),
    furnished(
        "carpet", "carpets", "Carpets", "Which carpets are there, of what size?", "Bring carpets."
    ),
    furnished(
        "music stand",
        "music stands",
        "Music stands",
        "How many music stands are there, and how many have lights?",
        "Bring or hire music stands.",
    ),
    furnished(
        "stand light",
        "stand lights",
        "Lights for music stands",
        "How many lights for music stands are there, and how are they fed?",
        "Bring or hire stand lights with their cable.",
    ),
    furnished(
        "chair",
        "chairs",
        "Chairs for the stage",
        "How many chairs for the stage are there, alike and without arms?",
        "Hire chairs.",
    ),
    furnished(
        "stool",
        "stools",
        "Stools",
        "How many stools are there, and how high are they?",
        "Bring or hire stools.",
    ),
    furnished(
        "table",
        "tables",
        "Tables for the stage",
        "Which tables are there, of what size?",
        "Hire tables.",
    ),
    furnished(
        "lectern",
        "lecterns",
        "Lecterns",
        "Is there a lectern, and does it carry microphones and a screen?",
        "Bring or hire a lectern.",
    ),
    furnished(
        "rostrum",
        "rostrums",
        "Conductor's rostrums",
        "Is there a conductor's rostrum, of what size, with a rail?",
        "Bring or hire a rostrum.",
    ),
    furnished(
        "orchestra shell",
        "orchestra shells",
        "Orchestra shells",
        "Is there an orchestra shell or ceiling, for how many players, and how long does it take?",
        "Play without one, or hire reflectors; what they hang from is looked at again.",
    ),
    furnished(
        "drape",
        "drapes",
        "Drapes",
        "Which drapes are there, of what size and colour?",
        SOFT,
    ),
    furnished(
        "ramp",
        "ramps",
        "Ramps to the deck",
        "Is there a ramp to the deck, how steep, and how wide?",
        "Hire a ramp for the deck's height, as steep as the local rules allow.",
    ),
)
"""What belongs to the deck and is put away, by its kind."""

RULES = (
    *FURNISHED,
    deck(
        key="rake",
        title="Slope of the deck",
        kind="share",
        ways=("at most",),
        value="rake",
        none_means="zero",
        question="Is the deck flat, and if not, how steep is it?",
        remedy="Level what stands on wheels or is danced on with a floor above the deck.",
        who="the show, or hire",
    ),
    deck(
        key="sprung floor",
        title="A floor that gives under dancers",
        kind="yes",
        ways=(IS,),
        value="sprung",
        question="Is the floor sprung, and what does it lie on?",
        remedy="Hire a sprung floor to lay on the deck; the deck is then higher.",
        who="hire",
    ),
    stage(
        key="crossover width",
        title="Way round behind the back drop, at its tightest",
        kind="length",
        item="whole",
        value="crossover_width",
        question="Is there a way round behind the back drop, how wide, and how is it lit?",
        remedy="Set the back drop further downstage, or plan entrances without it.",
        who="the show",
    ),
    deck(
        key="stage width",
        title="Stage width, clear",
        kind="length",
        ways=NUMBERS,
        value="usable_width",
        question="What is the clear width of the deck, between what always stands there?",
        remedy=(
            "Turn or leave out a riser, move side fills to the wings, or extend the deck with hired"
            " decks."
        ),
        who="the show, or hire",
    ),
    deck(
        key="stage depth",
        title="Stage depth, clear",
        kind="length",
        ways=NUMBERS,
        value="usable_depth",
        question="What is the clear depth of the deck, from its edge to the last masking?",
        remedy="Turn or leave out a riser, or build a thrust of hired decks.",
        who="the show, or hire",
    ),
    deck(
        key="deck height",
        title="Height of the deck above the audience floor",
        kind="length",
        ways=NUMBERS,
        value="height",
        question="How high is the deck above the audience floor, and can that be changed?",
        remedy=(
            "Ask whether the height can be changed; otherwise look at sight lines and the barrier"
            " again."
        ),
        who="the house",
    ),
    deck(
        key="clear height",
        title="Height to the lowest thing above the deck",
        kind="length",
        value="clear-under-rig",
        legal=True,
        none_means="no limit",
        question="How high is the lowest thing above the deck that cannot be moved?",
        remedy="Lower the highest piece, or leave it out.",
        who="the show",
    ),
    deck(
        key="deck load",
        title="Uniform load the deck carries",
        kind="load",
        value="load",
        legal=True,
        question="What uniform load does the deck carry, by whose letter?",
        remedy="Spread the load over more floor; a structural engineer decides.",
        who="the house's engineer",
    ),
    deck(
        key="point load",
        title="Largest single load on the deck",
        kind="mass",
        value="point_load",
        legal=True,
        question="What is the largest single load on the deck, on what footprint?",
        remedy="Spread the load on plates or beams; a structural engineer decides.",
        who="the house's engineer",
    ),
    wing("stage left", "width", "Width of the stage left wing, off the deck"),
    wing("stage left", "depth", "Depth of the stage left wing"),
    wing("stage left", "height", "Clear height of the stage left wing"),
    wing("stage right", "width", "Width of the stage right wing, off the deck"),
    wing("stage right", "depth", "Depth of the stage right wing"),
    wing("stage right", "height", "Clear height of the stage right wing"),
    stage(
        key="rolling risers",
        title="Rolling risers",
        kind="count",
        item="riser",
        value="count",
        where=(("rolling", "yes"),),
        combine="sum",
        day="sum",
        question="How many rolling risers are there, of what size and height?",
        remedy="Hire rolling risers.",
        who="hire",
    ),
    stage(
        key="riser area",
        title="Risers in stock",
        kind="area",
        item="riser",
        value="area",
        combine="sum",
        day="sum",
        question="How many risers are there, of what size and height?",
        remedy="Hire risers.",
        who="hire",
    ),
    stage(
        key="barrier length",
        title="Crowd barrier",
        kind="length",
        item="furnishing",
        value="length",
        where=(("kind", "barrier"),),
        question="How long is your crowd barrier, of what type, and who builds it?",
        remedy="Hire a barrier.",
        who="the promoter",
    ),
    stage(
        key="first row distance",
        title="From the deck's edge to the first row",
        kind="length",
        ways=NUMBERS,
        item="deck",
        value="first_row",
        none_means="no limit",
        question="How far is the first row from the edge of the deck?",
        remedy="Take out the first row, or set back what needs the room.",
        who="the promoter",
    ),
    stage(
        key="pianos",
        title="Pianos",
        kind="count",
        item="furnishing",
        value="count",
        where=(("kind", "piano|grand piano"),),
        combine="sum",
        question="Is there a piano, of what size and pitch, and who tunes it?",
        remedy="Hire a piano with its tuner.",
        who="hire",
    ),
    stage(
        key="grand pianos",
        title="Grand pianos",
        kind="count",
        item="furnishing",
        value="count",
        where=(("kind", "grand piano"),),
        combine="sum",
        question="Is there a grand piano, how long, tuned to what pitch, and who tunes it?",
        remedy="Hire a grand piano with its tuner.",
        who="hire",
    ),
    stage(
        key="grand piano length",
        title="Length of a grand piano",
        kind="length",
        item="furnishing",
        value="each_length",
        where=(("kind", "grand piano"),),
        question="How long is the grand piano, and to what pitch is it tuned?",
        remedy="Hire a longer one with its tuner.",
        who="hire",
    ),
    stage(
        key="steps to the deck",
        title="Steps to the deck",
        kind="count",
        item="furnishing",
        value="count",
        where=(("kind", "steps"),),
        combine="sum",
        question="How many steps to the deck are there, and are they with a handrail?",
        remedy="Hire steps for the deck's height.",
        who="hire",
    ),
    stage(
        key="proscenium width",
        title="Width of the proscenium opening",
        kind="length",
        ways=NUMBERS,
        item="whole",
        value="opening_width",
        otherwise=("proscenium",),
        none_means="no limit",
        question="How wide is the proscenium opening?",
        remedy="Mask in, or leave out what stands at the sides.",
        who="the show",
    ),
    stage(
        key="proscenium height",
        title="Height of the proscenium opening, as it is usually set",
        kind="length",
        ways=NUMBERS,
        item="whole",
        value="opening_as_set",
        otherwise=("opening_height", "proscenium"),
        none_means="no limit",
        legal=True,
        question="How high is the proscenium opening, to the arch and below the teaser?",
        remedy="Ask whether the teaser may be raised, or build lower.",
        who="the house",
    ),
    stage(
        key="traps",
        title="Traps that can be opened",
        kind="count",
        item="whole",
        value="traps",
        none_means="zero",
        question="Are there traps in the floor, where, and of what size?",
        remedy="Leave the trap out, or build a floor above the deck.",
        who="the show",
    ),
    stage(
        key="stage lift load",
        title="Uniform load on a lift of the stage or the pit, locked",
        kind="load",
        item="lift",
        value="load_locked",
        whole="lifts",
        legal=True,
        question="What does the lift carry when it is locked, by whose letter?",
        remedy="Keep the load off the lift, or spread it; a structural engineer decides.",
        who="the house's engineer",
    ),
    stage(
        key="level wings",
        title="Wings level with the deck",
        kind="yes",
        ways=(IS,),
        item="wing",
        value="level_with_deck",
        combine="all",
        question="Are the wings level with the deck?",
        remedy="Plan ramps, or build what rolls on the deck itself.",
        who="the show",
    ),
)
