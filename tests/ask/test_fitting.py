"""The choice of a session's doses, warm-up and finish is the best there is: held against every combination."""

from itertools import product

from hypothesis import given, settings
from hypothesis import strategies as st

from kb.ask.session.fitting import Fitted, Offer, Opener, Option, Way, fit, least_seconds

OPTIONS = st.lists(
    st.builds(Option, seconds=st.integers(1, 40), worth=st.integers(-20, 60)), min_size=1, max_size=3
).map(tuple)
WAYS = st.builds(
    Way,
    slots=st.lists(OPTIONS, min_size=0, max_size=3).map(tuple),
    worth=st.integers(-40, 10),
    covers=st.integers(0, 7),
)
OFFERS = st.builds(
    Offer,
    seconds=st.integers(1, 160),
    raises=st.lists(st.builds(Way, slots=OPTIONS.map(lambda each: (each,))), max_size=2).map(tuple),
    openers=st.lists(st.builds(Opener, covers=st.integers(0, 7), options=OPTIONS), max_size=3).map(tuple),
    opening_s=st.integers(0, 80),
    joints=st.lists(st.integers(0, 50), min_size=3, max_size=3).map(tuple),
    ways=st.lists(WAYS, min_size=1, max_size=3).map(tuple),
    ends=st.lists(st.builds(Way, slots=st.lists(OPTIONS, max_size=2).map(tuple)), min_size=1, max_size=3).map(tuple),
)


def every(offer: Offer) -> list[tuple[int, int]]:
    """The (worth, seconds) of every choice that fits, one by one: nothing is shared, nothing left out."""
    found = []
    raisings = [(way.worth, each) for way in offer.raises for each in product(*way.slots)] or [(0, ())]
    ends = [(way.worth, each) for way in offer.ends for each in product(*way.slots)]
    for first, raised in raisings:
        for opened in product(*([None, *opener.options] for opener in offer.openers)):
            opening = sum(option.seconds for option in opened if option is not None)
            if opening > offer.opening_s:
                continue
            for way in offer.ways:
                covered = way.covers
                for opener, option in zip(offer.openers, opened, strict=True):
                    covered |= opener.covers if option is not None else 0
                joints = sum(worth for n, worth in enumerate(offer.joints) if covered >> n & 1)
                for done in product(*way.slots):
                    for last, ended in ends:
                        options = [*raised, *(each for each in opened if each is not None), *done, *ended]
                        seconds = sum(option.seconds for option in options)
                        if seconds <= offer.seconds:
                            worth = first + way.worth + last + joints + sum(option.worth for option in options)
                            found.append((worth, seconds))
    return found


def said(offer: Offer, found: Fitted) -> tuple[int, int]:
    """What an answer's picks come to, added up again."""
    options: list[Option] = []
    fixed = offer.ends[found.end[0]].worth
    if found.raising is not None:
        fixed += offer.raises[found.raising[0]].worth
        options += [slot[n] for slot, n in zip(offer.raises[found.raising[0]].slots, found.raising[1], strict=True)]
    way = offer.ways[found.way[0]]
    covered = way.covers
    opening = 0
    for opener, pick in zip(offer.openers, found.openers, strict=True):
        if pick is not None:
            options.append(opener.options[pick])
            opening += opener.options[pick].seconds
            covered |= opener.covers
    assert opening <= offer.opening_s
    options += [slot[n] for slot, n in zip(way.slots, found.way[1], strict=True)]
    options += [slot[n] for slot, n in zip(offer.ends[found.end[0]].slots, found.end[1], strict=True)]
    joints = sum(worth for n, worth in enumerate(offer.joints) if covered >> n & 1)
    return fixed + way.worth + joints + sum(option.worth for option in options), sum(
        option.seconds for option in options
    )


@settings(max_examples=220, deadline=None)
@given(OFFERS)
def test_the_choice_is_the_best_of_all(offer: Offer) -> None:
    """The most worth that fits, then the least time; none if nothing fits; and the picks come to what is said."""
    found, choices = fit(offer), every(offer)
    if found is None:
        assert choices == []
        assert least_seconds(offer) > offer.seconds
        return
    best = max(worth for worth, _ in choices)
    assert (found.worth, found.seconds) == (best, min(s for worth, s in choices if worth == best))
    assert said(offer, found) == (found.worth, found.seconds)
    assert (found.raising is None) == (not offer.raises)


@settings(max_examples=60, deadline=None)
@given(OFFERS, st.integers(1, 60))
def test_more_time_is_never_worth_less(offer: Offer, more: int) -> None:
    """A session that is longer may be done as the shorter one was."""
    short, long = fit(offer), fit(offer._replace(seconds=offer.seconds + more))
    if short is not None:
        assert long is not None
        assert long.worth >= short.worth


def test_a_worse_way_is_taken_where_the_best_does_not_fit() -> None:
    """By hand: 30 s hold the short way at -5, not the long one."""
    long, short = Way((((Option(20, 10)),), (Option(20, 10),))), Way(((Option(25, 10),),), worth=-5)
    offer = Offer(30, (), (), 0, (), (long, short), (Way(()),))
    assert fit(offer) == Fitted(25, 5, None, (), (1, (0,)), (0, ()))
    assert fit(offer._replace(seconds=40)) == Fitted(40, 20, None, (), (0, (0, 0)), (0, ()))
    assert fit(offer._replace(seconds=24)) is None
    assert least_seconds(offer) == 25
