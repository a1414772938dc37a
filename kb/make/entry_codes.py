"""What can be wrong with one file by itself, explained: what is checked, why it matters, wrong and right.

The rules in kb/make/structure explain themselves in their own files; these codes come from reading.
"""

__all__ = ["ENTRY_CODES"]

_SHORT: dict[str, tuple[str, str, str, str]] = {
    "no-library": (
        "The folder has no drills/ in it.",
        "There is nothing to read; most often the path is one folder too high or too low.",
        "drillpath check drills",
        "drillpath check .",
    ),
    "stray-file": (
        "A Markdown file under drills/ stands anywhere but at drills/FOLDER/ID.md.",
        "It isn't read, and whoever wrote it would look for it in vain.",
        "drills/pull/old/floor-pull.md",
        "drills/pull/floor-pull.md",
    ),
    "unknown-folder": (
        "A folder under drills/ holds Markdown and isn't one of the folders of entries.",
        "Nothing in it is read.",
        "drills/fault/hips-rise-first.md",
        "drills/faults/hips-rise-first.md",
    ),
    "bad-id": (
        "The name of an entry's file isn't an id: a small letter, then small letters, digits and single hyphens.",
        "The id is the entry's address on every system and in every link, for ever.",
        "drills/pull/Floor_Pull.md",
        "drills/pull/floor-pull.md",
    ),
    "symlink": (
        "An entry, or a folder of entries, is a symbolic link.",
        "Links lead out of the library, or in circles, and are lost when it is copied.",
        "drills/pull/floor-pull.md -> ../../notes/pull.md",
        "drills/pull/floor-pull.md",
    ),
    "unreadable": (
        "A file or folder can't be opened, or isn't an ordinary file.",
        "What can't be read can't be used; the rest of the library is read without it.",
        "chmod 000 drills/pull/floor-pull.md",
        "chmod 644 drills/pull/floor-pull.md",
    ),
    "too-big": (
        "An entry is larger than 200 kB.",
        "An entry is read on a phone between two groups; one this large is something else.",
        "an entry with a picture pasted into it",
        "120 to 260 words",
    ),
    "bad-encoding": (
        "An entry isn't UTF-8 text.",
        "Letters would come out as others on some systems.",
        "a file saved as Latin-1 or UTF-16",
        "the same file saved as UTF-8",
    ),
    "bad-character": (
        "An entry holds a control character, a line separator, a mark that turns text round, or half a pair.",
        "They aren't seen, and change what is shown on terminals and pages.",
        'name: "Floor\\u202e pull"',
        "name: Floor pull",
    ),
    "no-front-matter": (
        "An entry doesn't begin with a line of three dashes, or its front matter isn't closed by another.",
        "Without front matter there is only text, and nothing says what it is.",
        "name: Floor pull\n## Do",
        "---\nname: Floor pull\n---\n## Do",
    ),
    "bad-yaml": (
        "The front matter isn't sound YAML, or isn't one map of fields.",
        "Nothing of the entry can be used; the line is where the reader gave up, and the slip often just before it.",
        "name: Pull: from the floor",
        'name: "Pull: from the floor"',
    ),
    "duplicate-key": (
        "A field is given twice in the same map.",
        "YAML would keep the last without a word, and one of the two was meant.",
        "speed: slow\nspeed: full",
        "speed: slow",
    ),
    "yaml-alias": (
        "The front matter uses a YAML anchor or alias.",
        "An entry must be read from top to bottom by anyone; and aliases can swell a small file beyond all bounds.",
        "lifts: &both [snatch, clean]",
        "lifts: [snatch, clean]",
    ),
    "yaml-tag": (
        "The front matter uses a YAML tag.",
        "Types are the fields' own; a tag can only contradict them.",
        "name: !!str 12",
        'name: "12"',
    ),
    "too-deep": (
        "Lists or maps are nested more than 20 deep in the front matter, or lists and quotes 12 deep in the body.",
        "No entry needs it, and programs that read it may fail.",
        "prerequisites: [[[[overhead-squat]]]]",
        "prerequisites: [[overhead-squat, air-squat]]",
    ),
    "yaml-surprise": (
        "A value is read by YAML as something else than it looks: `no` as false, `012` as 10, `1:30` as 90.",
        "What is stored would differ from what is written. Only `bridge: no` is meant as it is read.",
        "set_up_s: 1:30",
        "set_up_s: 90",
    ),
    "empty-value": (
        "A field has a name and no value.",
        "It can't be told whether the value was forgotten or the field is left over.",
        "speed:",
        "speed: slow",
    ),
    "unknown-field": (
        "The front matter has a field that entries of its kind don't have.",
        "A misspelt field would be passed over without a word.",
        "equipmnt: [bar]",
        "equipment: [bar]",
    ),
    "missing-field": (
        "A field that every entry of its kind needs isn't there.",
        "Something would have to be made up in its place.",
        "standard: {count: 3, of: 3}",
        'standard: {count: 3, of: 3, seen: "bar over mid-foot"}',
    ),
    "wrong-type": (
        "A value is of another type than its field: text where a number is due, one value where a list is.",
        "Nothing is converted in silence, so that what is stored is what was written.",
        "also: floor pull",
        "also: [floor pull]",
    ),
    "bad-value": (
        "A value is none that its field can take: a word that isn't on the scale, a name where an id is due.",
        "It would be compared with values that it isn't one of.",
        "speed: fast",
        "speed: full",
    ),
    "repeated-value": (
        "A list says the same thing twice.",
        "One of the two was meant to be something else.",
        "lifts: [clean, clean]",
        "lifts: [snatch, clean]",
    ),
    "unknown-heading": (
        "The body has a heading that entries of its kind don't have, or one that isn't of level 2.",
        "Pages and sheets show the sections by name; text under another heading would be lost.",
        "## Look fro",
        "## Look for",
    ),
    "repeated-heading": (
        "A section stands in the body twice.",
        "Only one of the two would be shown.",
        "## Say\n- Push\n## Say\n- Stay over",
        "## Say\n- Push\n- Stay over",
    ),
    "text-before-heading": (
        "The body begins with text before its first heading.",
        "It belongs to no section, so it would be shown nowhere.",
        "---\nLift it.\n## Do",
        "---\n## Do\nLift it.",
    ),
    "raw-html": (
        "The body holds raw HTML.",
        "Entries are shown on terminals, paper and pages alike, and what a page runs must come from us.",
        "Push <b>hard</b>.",
        "Push **hard**.",
    ),
    "bad-link": (
        "A link or picture in the body has an address that isn't http or https.",
        "It leads nowhere outside the writer's own machine, or runs something.",
        "[the pull](floor-pull.md)",
        "the floor pull",
    ),
}


def _indented(text: str) -> str:
    return "\n".join(f"    {line}" for line in text.split("\n"))


ENTRY_CODES: dict[str, str] = {
    code: f"{checks}\n\nWhy it matters: {why[0].lower()}{why[1:]}\n\n"
    f"Wrong:\n\n{_indented(wrong)}\n\nRight:\n\n{_indented(right)}\n"
    for code, (checks, why, wrong, right) in _SHORT.items()
}
"""Each code that reading one file can give, and its explanation in the form of the rules' own."""
