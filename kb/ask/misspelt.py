"""Words of a body in trouble that are often misspelt: their like is one edit away and begins alike."""

from kb.ask.spelling import one_edit_apart

__all__ = ["HARMLESS", "SPELT", "misspelt"]

SPELT = """
aches aching achilles allergy arthritis asthma bleeding bruise bruised bruising bursitis cancer cartilage children
concussed concussion daughter diabetes diabetic dislocate dislocated dizzy dizziness epilepsy faint fainted fainting
fever fracture fractured headache headaches hernia hurts hurting illness impingement inflamed inflammation injure
injured injuring injury injuries ligament meniscus migraine nausea nauseous numbness operation osteoporosis pacemaker
painful painfully physio physiotherapist postnatal pregnancy pregnant prolapse rehab ruptured sciatic sciatica seizure
soreness spasm spasms sprain sprained strained surgeon surgery swelling swells swollen tendinitis tendon tendonitis
tingle tingles tingling tingly toddler twinge unwell vertigo vomit vomiting
""".split()
"""Whole words that are often misspelt; their like is one edit away and begins alike."""

HARMLESS = frozenset(
    """
    acres arched arches arching ashes axes blending breeding canter feint fewer flint hunts hurling hurls
    shell shells smell smells spain spell spells spine stained strainer strainers sturgeon tangle tangled
    tangles tightly tinge tinges tinkling twine
    """.split()
)
"""Words as near as that which are none of theirs."""


def misspelt(word: str) -> bool:
    """Whether a folded word is likely one of these, misspelt."""
    if len(word) < 5 or len(word) > 20 or word in HARMLESS:
        return False
    return any(spelt[0] == word[0] and one_edit_apart(word, spelt) for spelt in SPELT)
