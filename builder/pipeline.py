"""
The whole story: text, venue, pack, document. Start here.

``venue_of`` reads and checks, ``pack_of`` computes, ``document_of`` lays out. Each is a function
from value to value; nothing here opens a file.
"""

import hashlib
from collections.abc import Callable, Iterator, Mapping, Sequence, Set
from dataclasses import dataclass, field, replace
from datetime import date

from builder import fit_file, pack_schema
from builder.arranged import pack_in, section_in, usual_name
from builder.bearers.telling import as_pages_tell
from builder.both_ends.joining import Sections, at_both_ends, published_figures
from builder.both_ends.states import in_either_state
from builder.by_configuration.joining import findings_of_all, section_of_all
from builder.by_configuration.standing import standings
from builder.by_configuration.telling import beside_the_usual, configuration_blocks
from builder.confirming import settled, with_confirmations
from builder.department import Department, Published, Surroundings
from builder.document import Attachment, Document, Page
from builder.exchange import Offers, heard, joined
from builder.house_only.logged import public_changes
from builder.house_only.naming import told_in_public
from builder.house_only.sealing import for_the_house, has_house_only, sealed
from builder.house_only.withholding import shown, withheld
from builder.layout import confirmed_blocks, other_photos
from builder.leaning import with_checks
from builder.oddities import told_differently
from builder.overview import overview_pages
from builder.overview.changes import FEED, changes_feed
from builder.overview.log import LOG, Log, changes_of
from builder.pack import Finding, Level, Pack, Place, Revision, Section, Space
from builder.pack_json import to_json
from builder.reading.language import NEWEST, newer_alone, words_of_before
from builder.reading.measures import System
from builder.reading.problems import Problem, Refused, Where
from builder.reading.reader import read
from builder.reading.references import kinds_named_in, missing_photos, problems_with_names
from builder.reading.remarks import Remark
from builder.reading.review import review
from builder.reading.text import one_line_end
from builder.reading.written import DepartmentFile
from builder.registry import DEPARTMENTS, HOUSE, RULES, House
from builder.spaces.elsewhere import POWER, drawing, files_elsewhere, sources_in
from builder.spaces.folders import folder_of, folder_problems, own_texts, path_in, shared_texts
from builder.spaces.joining import joined_pack
from builder.spaces.laying_out import LaidOut, pages_of_spaces
from builder.spaces.merging import in_space, of_space, of_the_house
from builder.spaces.naming import told_where
from builder.starting import as_it_began
from builder.stating import Ageing, place
from builder.working import in_both


@dataclass(frozen=True, slots=True)
class Venue:
    """
    What the crew wrote, read and checked: one description a department, by key, in the order of the
    site.

    Of a house of several stages these are what all share; ``spaces`` are its stages, each with its
    own files and as a venue of one stage: its own files with what all share.
    """

    descriptions: Mapping[str, DepartmentFile]
    fingerprint: str
    log: Log | None = None
    spaces: tuple["SpaceRead", ...] = ()

    @property
    def files(self) -> Mapping[str, DepartmentFile]:
        """Every file as it was written, by its path within the folder, without its ending."""
        own = {
            path_in(space.folder, key): file
            for space in self.spaces
            for key, file in space.own.items()
        }
        return {**self.descriptions, **own}

    @property
    def house(self) -> House:
        """The house's own file, which every venue has."""
        found = self.descriptions[HOUSE.key]
        if not isinstance(found, House):
            raise ValueError(
                f"descriptions['{HOUSE.key}'] must be a House, got {type(found).__name__}"
            )
        return found


@dataclass(frozen=True, slots=True)
class SpaceRead:
    """
    One stage of a house that has several: its name, its folder, its own files by department, and
    all that is of it as a venue of one stage.
    """

    name: str
    folder: str
    own: Mapping[str, DepartmentFile]
    venue: Venue


def venue_of(
    texts: Mapping[str, str],
    photos: Mapping[str, bytes] | None = None,
    memory: "Memory | None" = None,
) -> Venue:
    """
    Read a venue's files, given as text by file name, and the photos that its lines may show. A file
    of the same text as in ``memory`` is not read again.

    Raises
    ------
    Refused
        With every problem in every file.
    """
    beside = shared_texts(texts)
    problems: list[Problem] = [*missing_files(beside)]
    descriptions, wrong = read_files(beside, "", memory)
    problems += wrong
    own: dict[str, Mapping[str, DepartmentFile]] = {}
    for folder, its_texts in own_texts(texts).items():
        own[folder], wrong = read_files(its_texts, folder, memory)
        problems += wrong
    house = descriptions.get(HOUSE.key)
    problems += folder_problems(house if isinstance(house, House) else None, texts)
    log, wrong_entries = log_of(beside)
    problems += wrong_entries
    fingerprint = fingerprint_of(texts, photos or {})
    if problems:
        if not own:
            problems += problems_among_read(descriptions, beside)
            problems += missing_photos(descriptions.values(), photos or {})
        raise Refused(newer_alone(problems))
    venue = with_spaces(Venue(descriptions, fingerprint, log), own)
    problems += problems_between_files(venue)
    problems += missing_photos(venue.files.values(), photos or {})
    problems += older_words(texts, venue)
    if problems:
        raise Refused(problems)
    return venue


def problems_among_read(
    descriptions: Mapping[str, DepartmentFile], texts: Mapping[str, str]
) -> Iterator[Problem]:
    """
    What is wrong with names in the files that could be read, where others could not: every
    reference to what those may name would look wrong, so it waits for them.
    """
    unread = [
        department.description
        for department in DEPARTMENTS
        if (f"{department.key}.yml" in texts or department.required)
        and department.key not in descriptions
    ]
    elsewhere = {kind for description in unread for kind in kinds_named_in(description)}
    yield from problems_with_names(descriptions.values(), elsewhere)


def read_files(
    texts: Mapping[str, str], folder: str, memory: "Memory | None"
) -> tuple[dict[str, DepartmentFile], list[Problem]]:
    """
    The descriptions of the files of one folder by department, and what is wrong in others. The
    folder is that of a space; empty for what stands beside ``house.yml``.
    """
    found: dict[str, DepartmentFile] = {}
    problems: list[Problem] = []
    for department in DEPARTMENTS:
        if (file := f"{department.key}.yml") in texts:
            path = path_in(folder, file) if folder else file
            try:
                found[department.key] = read_once(department, texts[file], path, memory)
            except Refused as refused:
                problems += refused.problems
    return found, problems


def with_spaces(venue: Venue, own: Mapping[str, Mapping[str, DepartmentFile]]) -> Venue:
    """A venue with each of its spaces as a venue of one stage."""
    house = venue.house
    if not house.spaces:
        return venue
    powers = [file for key, file in venue.descriptions.items() if key == POWER]
    powers += [files[POWER] for files in own.values() if POWER in files]
    taken = {name for power in powers for name in sources_in(power)}
    drawn = {
        space.name: drawing(own[folder_of(space)], space.name, names_in(house, space.name), taken)
        for space in house.spaces
    }
    spaces = []
    for space in house.spaces:
        folder = folder_of(space)
        descriptions = of_space(venue.descriptions, own[folder], space.name)
        others = [files for name, files in drawn.items() if name != space.name]
        for files in others:
            descriptions |= files
        alone = Venue(descriptions, venue.fingerprint, venue.log)
        spaces.append(SpaceRead(space.name, folder, own[folder], alone))
    return replace(venue, spaces=tuple(spaces))


def names_in(house: House, space: str) -> list[str]:
    """The names of the configurations of a space."""
    there = in_space(house, space)
    return [each.name for each in there.configurations] if isinstance(there, House) else []


def problems_between_files(venue: Venue) -> list[Problem]:
    """What is wrong between the files of a venue, of one stage or of each of several."""
    if not venue.spaces:
        return [*problems_with_names(venue.descriptions.values())]
    found: dict[Problem, None] = {}
    for space in venue.spaces:
        own = [file for _, file in described(space.venue)]
        for problem in problems_with_names(own):
            found.setdefault(told_where(problem, {each.name: each.own for each in venue.spaces}))
        for file in own:
            found |= dict.fromkeys(file.contradictions_when_joined())
    return list(found)


def older_words(texts: Mapping[str, str], venue: Venue) -> list[Problem]:
    """What a venue of the newest language says in words of one before."""
    if venue.house.language < NEWEST:
        return []
    return [
        problem
        for path, description in venue.files.items()
        for problem in words_of_before(texts[f"{path}.yml"], f"{path}.yml", description)
    ]


def read_once(
    department: Department[DepartmentFile], text: str, path: str, memory: "Memory | None"
) -> DepartmentFile:
    """A department's file, read once for the same text."""
    known = memory.files.get(path) if memory else None
    if known and known[0] == text:
        return known[1]
    file = read(text, file=path, kind=department.description)
    if memory:
        memory.files[path] = (text, file)
    return file


def log_of(texts: Mapping[str, str]) -> tuple[Log | None, tuple[Problem, ...]]:
    """The house's log, which a venue need not have, and what is wrong with it."""
    if LOG not in texts:
        return None, ()
    try:
        return read(texts[LOG], file=LOG, kind=Log), ()
    except Refused as refused:
        return None, refused.problems


def missing_files(texts: Mapping[str, str]) -> list[Problem]:
    """
    A problem for each file that every venue needs and this one lacks, and for each that no
    department reads.
    """
    known = {f"{department.key}.yml": department for department in DEPARTMENTS}
    lacking = [
        Problem(
            Where(file),
            "",
            "",
            "is missing",
            "file-missing",
            f"write it; 'housepack new myhouse' writes one to begin with ({department.title})",
        )
        for file, department in known.items()
        if department.required and file not in texts
    ]
    strangers = [
        Problem(
            Where(file),
            "",
            "",
            "is not a file of any department",
            "file-unknown",
            f"known: {', '.join((*known, LOG))}",
        )
        for file in texts
        if file not in known and file != LOG
    ]
    return [*lacking, *strangers]


def fingerprint_of(texts: Mapping[str, str], photos: Mapping[str, bytes]) -> str:
    """A short hash of all texts and photos, the same on every machine."""
    digest = hashlib.sha256()
    for photo in sorted(photos):
        digest.update(f"{photo}\0".encode() + photos[photo])
    for file in sorted(texts):
        digest.update(f"{file}\0{one_line_end(texts[file])}\0".encode())
    return digest.hexdigest()[:12]


def read_in(system: System, section: Section) -> Section:
    """
    A section whose workings a house of these units can follow: steps are computed in metres and
    kilograms.
    """
    if system != "imperial":
        return section
    items = [
        replace(
            item,
            figures=tuple(
                replace(figure, working=in_both(figure.working)) for figure in item.figures
            ),
        )
        for item in section.items
    ]
    return replace(
        section,
        items=tuple(items),
        fields=tuple(replace(field, working=in_both(field.working)) for field in section.fields),
    )


@dataclass(frozen=True, slots=True)
class Packs:
    """What a venue publishes, and the same as the house itself reads it, with every line."""

    published: Pack
    house: Pack


Done = dict[str, tuple[tuple[DepartmentFile, Surroundings, Published], ...]]
"""
What departments published of which file and surroundings, the last first, so that nothing is
computed twice.
"""
MOST_DONE = 16
"""
So many are kept of a department: of each configuration that moves things, for visitors and for the
house itself.
"""
DoneBySpace = dict[str, Done]
"""The same of each space by its folder; of a house of one stage under an empty one."""


@dataclass(slots=True)
class Memory:
    """
    What was read of which text, and what departments published of it: kept by whoever makes a
    venue's pack again after each edit.
    """

    files: dict[str, tuple[str, DepartmentFile]] = field(default_factory=dict)
    done: DoneBySpace = field(default_factory=dict)


def pack_of(venue: Venue, *, on: date | None = None, memory: Memory | None = None) -> Pack:
    """
    Compute what the venue publishes. Ages count to the day of the revision, or to ``on``. What a
    department published of the same file in the same surroundings is taken from ``memory``.

    What is for the house only counts, and is not told.
    """
    return published_pack(venue, on, memory.done if memory else {})


def packs_of(venue: Venue, *, on: date | None = None) -> Packs:
    """The pack that is published, and that of the house, in one go."""
    done: DoneBySpace = {}
    published = published_pack(venue, on, done)
    if not has_house_only(venue.files):
        return Packs(published, replace(published, log=changes_of(venue.log)))
    return Packs(published, own_pack(venue, on, done))


def house_pack_of(venue: Venue, *, on: date | None = None) -> Pack:
    """The pack as the house itself reads it, with what is for the house only."""
    return own_pack(venue, on, {})


def own_pack(venue: Venue, on: date | None, done: DoneBySpace) -> Pack:
    """The house's own pack, with what public words tell that they should not."""

    def of_one(one: Venue, done: Done) -> Pack:
        own = replace(one, descriptions=for_the_house(one.descriptions))
        return computed(own, on, done, also=told_in_public(one.descriptions, one.log))

    return replace(of_each(venue, of_one, done), log=changes_of(venue.log))


def published_pack(venue: Venue, on: date | None, done: DoneBySpace) -> Pack:
    """The pack that is published: computed and told without a word of what is hidden."""

    def of_one(one: Venue, done: Done) -> Pack:
        if not has_house_only(one.descriptions):
            return computed(one, on, done)
        without_words = sealed(for_the_house(one.descriptions))
        public = replace(one, descriptions=without_words.descriptions)
        pack = computed(public, on, done, hidden=without_words.places)
        return withheld(pack, without_words)

    pack = of_each(venue, of_one, done)
    return replace(pack, log=public_changes(venue.log, venue.files))


def of_each(venue: Venue, of_one: Callable[[Venue, Done], Pack], done: DoneBySpace) -> Pack:
    """The pack of a venue: of its one stage, or of all its spaces joined."""
    house_done = done.setdefault("", {})
    if not venue.spaces:
        return of_one(venue, house_done)
    house = replace(venue, descriptions={HOUSE.key: of_the_house(venue.house)}, spaces=())
    packs = {
        Space(space.folder, space.name): of_one(space.venue, done.setdefault(space.folder, {}))
        for space in venue.spaces
    }
    whole = joined_pack(of_one(house, house_done), packs)
    return replace(whole, findings=tuple(sorted(whole.findings, key=weight)))


def computed(
    venue: Venue,
    on: date | None,
    done: Done,
    *,
    hidden: Set[Place] = frozenset(),
    also: Sequence[Finding] = (),
) -> Pack:
    """
    The pack of the descriptions of one stage, with findings made elsewhere. Where one fact is told
    twice, what stands at a hidden place is not held against the other.
    """
    house = venue.house
    ageing = Ageing(on=on or house.revision.on, stale_after_days=house.stale_after_days)
    around = surroundings_of(venue, ageing)
    every = published_by_configuration(venue, ageing, done)
    remarks = [
        remark
        for _, file in described(venue)
        for remark in review(file, on=ageing.on, stale_after_days=ageing.stale_after_days)
    ]
    open_statements = [
        each for each in around.exchange.statements if place(each.where) not in hidden
    ]
    findings = (
        *findings_of_all([(names, findings_in(parts)) for names, parts in every]),
        *(finding_of(remark) for remark in remarks),
        *told_differently(open_statements),
        *as_it_began(venue.descriptions),
        *also,
    )
    sorted_out = settled(findings, [file for _, file in described(venue)])
    told = [
        (names, [with_checks(read_in(house.units, part.section), ageing) for part in parts])
        for names, parts in every
    ]
    sections = [
        section_of_all([(names, parts[number]) for names, parts in told])
        for number in range(len(told[0][1]))
    ]
    return Pack(
        venue=house.name,
        revision=revision_of(venue),
        sections=tuple(with_confirmations(section, sorted_out.confirmed) for section in sections),
        findings=tuple(sorted(sorted_out.open, key=weight)),
        system=house.units,
        stale_after_days=house.stale_after_days,
        log=changes_of(venue.log),
        rules=tuple(RULES.values()),
        confirmed=tuple(sorted(sorted_out.confirmed, key=lambda each: weight(each.finding))),
    )


def published_by_configuration(
    venue: Venue, ageing: Ageing, done: Done
) -> list[tuple[tuple[str, ...], list[Published]]]:
    """
    What all departments publish in each configuration of the house in which other lines are there
    that figures count with, the usual one first.
    """
    found = []
    names = [each.name for each in venue.house.configurations]
    for standing in standings(venue.descriptions, names):
        there = replace(venue, descriptions=standing.descriptions)
        around = surroundings_of(there, ageing)
        published = with_two_ends(there, published_in(there, around, done), ageing, done)
        found.append((standing.configurations, published))
    return found


def findings_in(published: Sequence[Published]) -> list[Finding]:
    """The findings of all departments."""
    return [finding for part in published for finding in part.findings]


def published_in(venue: Venue, around: Surroundings, done: Done) -> list[Published]:
    """What all departments publish."""
    return [
        published_once(department, file, beside(around, venue, department), done)
        for department, file in described(venue)
    ]


def beside(
    around: Surroundings, venue: Venue, department: Department[DepartmentFile]
) -> Surroundings:
    """
    The surroundings of one department: of the offers those that it listens to, and its files in
    other spaces under the same roof.
    """
    others = files_elsewhere(venue.descriptions, department.key)
    return replace(around, exchange=heard(around.exchange, department.listens_to), elsewhere=others)


def with_two_ends(
    venue: Venue, published: list[Published], ageing: Ageing, done: Done
) -> list[Published]:
    """What is published, with figures at both ends of values that are known in part."""

    def sections_of(descriptions: Mapping[str, DepartmentFile]) -> Sections:
        other = replace(venue, descriptions=descriptions)
        around = surroundings_of(other, ageing)
        return {part.section.key: part.section for part in published_in(other, around, dict(done))}

    def at_ends(descriptions: Mapping[str, DepartmentFile]) -> Sections:
        return at_both_ends(sections_of(descriptions), descriptions, sections_of)

    sections = {part.section.key: part.section for part in published}
    found = at_both_ends(sections, venue.descriptions, sections_of)
    found = in_either_state(found, venue.descriptions, at_ends)
    return [replace(part, section=published_figures(found[part.section.key])) for part in published]


def surroundings_of(venue: Venue, ageing: Ageing) -> Surroundings:
    """What each department of a venue knows beyond its own file."""
    return Surroundings(offers_of(venue), ageing, venue.house.units)


def offers_of(venue: Venue) -> Offers:
    """What the departments of one stage tell each other."""
    return joined(department.offer(file) for department, file in described(venue))


def published_once(
    department: Department[DepartmentFile], file: DepartmentFile, around: Surroundings, done: Done
) -> Published:
    """What one department publishes, computed once for the same file and surroundings."""
    known = done.get(department.key, ())
    for one, beside_it, published in known:
        # A file that is sealed again is another object and the same file.
        if beside_it == around and (one is file or one == file):
            return published
    published = published_by(department, file, around)
    done[department.key] = ((file, around, published), *known)[:MOST_DONE]
    return published


def revision_of(venue: Venue) -> Revision:
    """Which revision a venue is, with the mark of its texts."""
    revision = venue.house.revision
    return Revision(
        revision.number,
        revision.on.isoformat(),
        revision.by,
        venue.fingerprint,
        revision.note or "",
    )


def published_by(
    department: Department[DepartmentFile], file: DepartmentFile, around: Surroundings
) -> Published:
    """What one department publishes. A failure of ours is told of which file it was."""
    try:
        published = department.publish(file, around)
        return replace(published, section=replace(published.section, note=file.note or ""))
    except Exception as failure:
        failure.add_note(f"{department.key}.yml")
        raise


def described(venue: Venue) -> list[tuple[Department[DepartmentFile], DepartmentFile]]:
    """The departments that this venue describes, each with its file."""
    return [
        (department, venue.descriptions[department.key])
        for department in DEPARTMENTS
        if department.key in venue.descriptions
    ]


def finding_of(remark: Remark) -> Finding:
    """A remark on the text as a finding of the pack."""
    return Finding(
        Level(remark.level),
        remark.code,
        remark.sentence,
        place=place(remark.where),
        asks_about=remark.asks_about,
        question=remark.question,
    )


def weight(finding: Finding) -> tuple[int, str, int, str, str]:
    """
    Dangers first, then cautions, then notes; within those by place and words, so that the order
    never depends on chance.
    """
    where = finding.place
    return (
        list(Level).index(finding.level),
        where.file if where else "",
        where.line if where else 0,
        finding.code,
        finding.sentence,
    )


def document_of(pack: Pack) -> Document:
    """Lay a pack out as pages. Reads the pack alone; what it only counts with is on none."""
    document = pages_of_spaces(pack, laid_out) if pack.spaces else laid_out(pack).document
    feeds = [Attachment(FEED, changes_feed(pack).encode())] if pack.log else []
    return replace(document, files=(*data_files(pack, document), *feeds))


def laid_out(whole: Pack) -> LaidOut:
    """
    The pages of a pack of one stage, without the files beside them. Departments show it as told,
    where each thing says what bears it; the overview lists what each line says of itself.
    """
    pack, told = shown(whole), shown(as_pages_tell(whole))
    by_key = {department.key: department for department in DEPARTMENTS}
    pages = [
        page
        for section in told.sections
        for page in beside_the_usual(
            with_the_rest(by_key[section.key].pages(section, told), section, told),
            list(maps_elsewhere(section, told)),
        )
    ]
    headlines = [
        entry for section in told.sections for entry in by_key[section.key].headline(section, told)
    ]
    home, *others = overview_pages(pack, headlines)
    return LaidOut(Document(pack.venue, (home, *pages, *others)), headlines)


def data_files(pack: Pack, document: Document) -> tuple[Attachment, ...]:
    """The pack, and what the check reads of it, each with its schema."""
    texts = {
        "pack.json": to_json(pack),
        pack_schema.PATH: pack_schema.pack_schema_text(),
        fit_file.PATH: fit_file.fit_file_text(pack, document),
        fit_file.SCHEMA_PATH: fit_file.fit_schema_text(),
    }
    return tuple(Attachment(path, text.encode()) for path, text in texts.items())


def with_the_rest(pages: Sequence[Page], section: Section, pack: Pack) -> Sequence[Page]:
    """
    The pages of a department, with what differs in other configurations, the photos that none shows
    and what is confirmed in its file at the end of the first; then its maps for those.
    """
    file = f"{section.key}.yml"
    confirmed = [
        each
        for each in pack.confirmed
        if each.finding.place and each.finding.place.file.rpartition("/")[2] == file
    ]
    told = confirmed_blocks(confirmed) if confirmed else []
    rest = (
        *configuration_blocks(section, usual_name(pack)),
        *other_photos(section.items, pages),
        *told,
    )
    if not rest or not pages:
        return pages
    return (replace(pages[0], blocks=(*pages[0].blocks, *rest)), *pages[1:])


def maps_elsewhere(section: Section, pack: Pack) -> Iterator[Page]:
    """A page for each other configuration in which the maps of a department differ."""
    department = next(each for each in DEPARTMENTS if each.key == section.key)
    for each in section.elsewhere:
        if each.fields or each.without_maps:
            name = each.configurations[0]
            there = pack_in(pack, name)
            own = section_in(section, name)
            yield from department.maps_in(own, there, each.configurations)
