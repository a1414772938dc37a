"""What comes first where a trouble is the grip's, the skin's or the bar's own, or a niggle (see kb/ask/minors.py)."""

__all__ = [
    "BACK_AFTER",
    "BRUISED",
    "KNOCKED",
    "LANDED",
    "NEXT_DAY",
    "NIGGLE",
    "ONE_WRIST",
    "PINCH",
    "RACKED",
    "SCRAPED",
    "SORE",
    "SPOTS",
    "SQUEEZE",
    "STRETCHED",
    "TOE",
]

SQUEEZE = (
    "A hook grip squeezes the thumb. What ends as the hand opens is the grip's own: tape round the thumb, the thinnest"
    " bar, short sets, the hand open in between, or no hook for today. Pain in the joint, pain that stays, a swollen or"
    " numb thumb: no hook, and ask someone qualified first."
)
"""What comes first where only the thumb is said to hurt, and only in the hook. Common practice, no source."""

SCRAPED = (
    "Broken skin: no more on it today. Wash it, cover it, and wipe the bar; long socks or trousers for shins, tape or"
    " an easier grip for palms. Deep, dirty, red round it or not closing: ask someone qualified first."
)
"""What comes first where only the skin of shins or palms is said to be open. Common practice, no source."""

BRUISED = (
    "A bruise where the bar meets hips, thighs or knees: no bang there, and until it is gone a finger of air where a"
    " drill brushes, or a light brush over a folded towel under the shorts. Deep, spreading, or without a blow: ask"
    " someone qualified first."
)
"""What comes first where only the place that the bar meets is said to be bruised. Common practice, no source."""

NEXT_DAY = (
    "An ache that comes the day after and goes by itself: less of it, lighter, and not again before it is gone. One"
    " that is felt in the lift, sits in one spot, grows or stays: leave out what brings it on, and ask someone"
    " qualified first."
)
"""What comes first where limbs are said to ache the day after, and no more. Common practice, no source."""

SORE = (
    "Sore in the thick of the muscle, on both sides, a day to three after much or new work, and easing as it warms:"
    " come. Warm up ten minutes longer, then light and few, nothing deep or slow on what is sore, and nothing of what"
    " made it until it is gone. In one spot or on one side, swollen, not less on the third day, or dark urine: no"
    " training, and a doctor first."
)
"""What comes first where muscles are said to be sore from a session, and no more: whether to come at all. Common
practice, no source."""

RACKED = (
    "Wrists bent back under a bar ache. What goes as soon as the bar lies on the shoulders, or is put down, is the"
    " rack's own: a stick, open fingers or straps until it lies there, and no bar held in the hands. Pain in one spot,"
    " with swelling, numb fingers, or that stays: leave the rack alone, and ask someone qualified first."
)
"""What comes first where wrists are said to ache in the rack, and no more. Common practice, no source."""


KNOCKED = (
    "An elbow that meets the knee bends the wrist back hard, and wrists have broken so: no clean at full depth, and"
    " no weight in one, until the elbows pass the knees with a stick every time; meanwhile power cleans, and front"
    " squats with the elbows high. A wrist that was hurt by one hard knock, is swollen, or hurts at rest, in a grip or"
    " when pressed: someone qualified first."
)
"""What comes first where a wrist is said to hurt as elbow and knee meet, and only then. Common practice, no source."""


LANDED = (
    "A bar that drops on to the collarbones hurts: nothing more dropped on them today, and no weight that isn't met"
    " without a sound; a stick, then the lightest bar. A lump, pain on lifting the arm or on a breath, a blow to the"
    " throat, or what stays: ask someone qualified first."
)
"""What comes first where only a bar that lands on the collarbones is said to hurt. Common practice, no source."""


SPOTS = (
    "Spots or grey sight under a bar: let it go in front at once, step back, sit or lie down, and no more bar today."
    " New, fainting or nearly, at less effort, at rest, or with chest pain, an odd heartbeat or a headache: a doctor"
    " first, and for chest pain or a faint an emergency call. Looked at, and nothing found: no bar against the throat,"
    " a little breath let out once past the hardest point, and no weight that isn't stood up briskly."
)
"""What comes first where sight greys after an effort and a doctor has looked. Common practice, no source."""


NIGGLE = (
    "A niggle: do only what leaves it no worse, at once and the next morning; lighter, slower, less far, and nothing"
    " that brings it on. Sharp, swollen, numb, catching, giving way, growing, after a knock or a fall, felt at rest or"
    " at night, or there for longer than a fortnight: ask someone qualified first."
)
"""What comes first where a joint is said to grumble, and no more. Common practice, no source."""


TOE = (
    "A big toe that won't bend without pain: nothing that bends it, so no split, no tiptoe, and no kneeling on it. The"
    " jerk with level feet is the way round (`chain ... --to power-jerk`), the heels down in its drive too; what begins"
    " on the toes is begun on flat feet, or left out. Hot, red, swollen, numb, after a knock, or hurting at rest: a"
    " doctor first; else have it looked at all the same."
)
"""What comes first where only a big toe is said to hurt, and only in the split. Common practice, no source."""


PINCH = (
    "A pinch at the front of the hip at the bottom, and no pain else: never into it, in stretches neither. Try feet up"
    " to a hand wider, toes turned out as each side likes, and only as deep as without a pinch; nothing that forces"
    " the knee in or the foot straight. There all the same, more than now and then, growing, catching, clicking, a"
    " limp, or felt in sitting or at night: ask someone qualified first."
)
"""What comes first where the front of the hip is said to pinch at the bottom, and pain is denied. Common practice, no
source."""


BACK_AFTER = (
    "A low back that aches after lifting and is well by the next morning: nothing that hollows it, or rounds it under"
    " load, and half as much of what brings it on. Nothing goes overhead with the ribs up; if they can't stay down, a"
    " stick only. In the lift itself, longer than a night, growing, or again and again for a fortnight: ask someone"
    " qualified first. Into a leg, numb or weak, or bladder or bowels changed: no lifting, and a doctor at once."
)
"""What comes first where a low back is said to ache after lifting and to be well by the morning. Common practice, no
source."""


ONE_WRIST = (
    "A wrist that gets sore from a bar held in the hand: nothing that bends it back under load until it is well, no"
    " leaning on the hand and nothing overhead but a stick; pulls, front squats with straps or crossed arms, and what"
    " opens the rack without weight meanwhile. Sore at rest, in a grip or under a stick, swollen, numb fingers, after a"
    " fall or a knock, or for a fortnight: ask someone qualified first."
)
"""What comes first where a wrist is said to get sore from cleans, and no more. Common practice, no source."""


STRETCHED = (
    "A joint made sore by a stretch: leave that stretch out. Where a joint has always stopped short, without pain, it"
    " isn't pushed further. Still sore without it, stopping sooner than it did, catching, swollen or numb: ask someone"
    " qualified first."
)
"""What comes first where a stretch is said to make a joint sore. Common practice, no source."""
