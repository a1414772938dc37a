"""What coaches shout is the remedy: the words of the fault that it answers; and the part of a lift that words name."""

from collections.abc import Set as AbstractSet

from kb.speech import stem, stems

__all__ = ["answered", "cue_table", "points_named", "spot_table"]

_CUES = """
    long arms > arms bend early
    straight arms > arms bend early pull
    loose arms > arms bend early
    arms ropes > arms bend early
    chicken wing > arms bend early
    bend it early > arms bend
    relax arms > arms bend early
    flat back > back rounds floor
    tight back > back rounds floor
    back tight > back rounds floor
    set back > back rounds
    lock back > back rounds
    chest up > chest drops
    chest over > shoulders fall behind bar early
    proud chest > chest drops
    hips down > hips rise first
    hips low > hips rise first
    push floor > hips rise first legs
    push legs floor > hips rise first
    knees back > bar drifts forward knee
    sweep > bar drifts forward away
    bar close > bar away
    it close > bar away
    it in > bar away
    stay over > shoulders behind bar early
    cover bar > shoulders behind bar early
    shoulders over > shoulders behind bar early
    be patient > early
    wait > early
    whole foot > weight on toes forward
    flat foot > heels lift toes
    mid foot > weight toes
    heels down > heels lift
    heels floor > heels
    through heels > weight toes
    into heels > weight toes
    back heels > weight toes
    finish pull > pull cut short
    finish > cut short
    full extension > pull cut short extension
    get tall > cut short extension
    stand tall > cut short extension
    triple extension > pull cut short
    hips through > cut short hips
    open hips > hips bent cut short
    straight up > bar loops out forward
    up shirt > bar loops out
    up body > bar loops out
    up chest > bar loops out
    from body > bar away loops out
    feet under you > feet wide
    land narrow > feet wide
    feet in > feet wide
    feet close > feet wide
    legs out there > feet wide
    jump straight > jumps forward
    on spot > jumps forward
    get under > catches high under
    pull under > under
    go under > under
    sit under > catches high under
    drop under > under
    full squat > catches high
    squat it > catches high
    meet bar > bar crashes
    meet it > bar crashes
    catch it > receive
    knees out > knees cave
    spread knees > knees cave
    knees apart > knees cave
    open knees > knees cave
    hold on > grip opens
    hook > grip hook
    squeeze bar > grip opens
    head through > bar forward front overhead
    over head > overhead
    pull back > forward
    reach back > forward
    punch up > soft elbows
    push up > soft elbows
    reach ceiling > soft elbows
    hold lock > elbows soft
    lock arms > elbows soft overhead
    lock elbows > elbows soft overhead
    lock out > elbows press out
    fast elbows > slow elbows
    quick elbows > slow elbows
    fast hands > slow turnover
    quick turnover > slow turnover
    whip elbows > slow elbows
    punch under > slow turnover
    elbows up > elbows low
    elbows high > elbows low
    elbows through > slow elbows
    elbows ceiling > elbows low
    elbows round > slow elbows
    arms round > slow elbows
    bounce > stuck bottom
    out hole > bottom recovery
    out bottom > bottom recovery
    get up > stand recovery
    stand up > stand recovery
    come up > stand recovery
    way up > stand recovery
    getting up > stand recovery
    on shoulders > bar off shoulders
    straight down > dip forward
    vertical dip > dip forward
    dip straight > dip forward
    short dip > dip too deep
    short snappy > dip too deep
    shallow dip > dip too deep
    legs first > arms early press before legs
    use legs > arms press before legs drive
    legs then arms > arms press early
    drive up > drive
    finish legs > drive cut short
    finish drive > drive cut short
    leg drive > drive legs
    big split > split short
    big lunge > split short
    step far > split short
    far out > far
    bend rearleg > rearleg locks straight
    soft rearleg > rearleg locks straight
    hip width > feet on one line narrow split
    wide split > feet on one line narrow split
    two tracks > feet on one line split
    rail track > feet on one line split
    ribs down > ribs flare arch
    ribs in > ribs flare arch
    squeeze glute > arch back
    brace > arch back
    frontleg first > recovers wrong foot rearleg first
    frontleg back > recovers wrong foot
    feet together > recovery
    take breath > rushes reset
    breathe > rushes reset breath
    settle > rushes reset
    reset > rushes reset
    take time > rushes
    after clean > clean jerk
    one line > feet line
    push press > press early
    red light > press out
    no lift > press out
    white light > press out
    no power > drive
    start front rack > rack
    both feet > feet
    high catch > catches high
    muscle > press slow
    power > catches high power
    hold it > hold
"""

_POINTS = """
    start knee: off floor, leave floor, break floor, first pull, off ground, deck, lift off, start, from floor, break
        ground, leave ground, break off, liftoff, plates
    knee hip: past knee, mid thigh, above knee, before hip, high thigh, pass knee, second pull, from knee
    hip extension: second pull, finish, pocket, extend, explode, contact, triple, top pull, tall
    extension receive: under, turnover, turn, whip
    receive: catch, bottom, hole, squat, receive, sit, land, rack
    stand recovered: stand, get up, come up, recover, way up, out hole, drive up, stagger
    rack dip: dip, dips
    dip drive: drive, dip, leg drive
    split: split, lunge, rearleg, frontleg
    receive stand split recovered: overhead, above head
"""


def cue_table() -> list[tuple[frozenset[str], tuple[str, ...]]]:
    """What is shouted, as stems, and the stems of the fault that it answers."""
    halves = [line.split(">") for line in _CUES.splitlines() if line.strip()]
    return [(frozenset(map(stem, cue.split())), tuple(stems(fault))) for cue, fault in halves]


def spot_table() -> list[tuple[tuple[str, ...], frozenset[str]]]:
    """Points of a lift, and stems that together speak of them."""
    found: list[tuple[tuple[str, ...], frozenset[str]]] = []
    points: list[str] = []
    for line in _POINTS.splitlines():
        head, colon, tail = line.partition(":")
        points = head.split() if colon else points
        phrases = [phrase for phrase in (tail if colon else line).split(",") if phrase.strip()]
        found += [(tuple(points), frozenset(stem(word) for word in phrase.split())) for phrase in phrases]
    return found


def answered(words: AbstractSet[str]) -> list[str]:
    """The words of the faults that a question's stems would mend if they were shouted.

    >>> answered({"long", "arm"})
    ['bend', 'early']
    """
    found = dict.fromkeys(word for cue, fault in cue_table() if cue <= words for word in fault)
    return [word for word in found if word not in words]


def points_named(words: AbstractSet[str]) -> frozenset[str]:
    """The points of a lift that a question's stems speak of; none if they don't say.

    >>> sorted(points_named({"bum", "off", "floor"}))
    ['knee', 'start']
    """
    return frozenset(point for points, phrase in spot_table() if words >= phrase for point in points)
