"""How coaches speak: words that carry nothing, words that mean the same, and the stem of a word."""

from kb.words import fold

__all__ = ["EMPTY", "SAME", "carries", "stem", "stems"]

EMPTY = frozenset(
    """
    a about again ah ain all also always am an and any are aren as at athlete be because been being bit but by can
    cannot cant could couldn coz cuz did didn do does doesn doesnt doing don done dont each even every for from get
    gets getting girl go goes going got guy had has hasn have haven he her hers him his how i if im in into is isn
    it its itself just keep keeps kind lad lady lifter ll like look looking looks lot m man me my myself need needs
    never no not of oh ok okay on one or our ours people person please re really s seem seems she should shouldn so
    some still t than that thats the their them then there they thing this to too trying try u up us ve very was
    wasn way we well were weren what when where which while who why will with woman won wont would wouldn you your
    yourself am gonna wanna kinda sort actually bloody damn every each time times rep reps set sets today mate
    guys lifters himself herself themselves here now thing things something must want wants let lets
    """.split()
)
"""Words that say nothing of a lift."""

_IRREGULAR = {
    word: stem
    for line in """
        foot feet footed footwork; tooth teeth; come came coming; go went gone; fall fell fallen; bend bent bendy
        lose lost losing loss; hold held; catch caught; slide slid; sit sat; leave left; swing swung; drive drove
        driven driving; break broke broken; stand stood standing; hang hung; rise rose risen; leap leapt; throw
        threw thrown; stick; stuck stick stucks; straight straighten straightens straightened straightening
        straighter; wide widen widens widened wider width; short shorten shortens shortened shorter; narrow
        narrower; deep deeper depth; low lower lowers lowered; high higher height; long longer; quick quicker
        quickly; fast faster; slow slower slowly; close closer; far further farther; shallow shallower; big bigger
        huge massive; small smaller; early earlier; late later lately; soft soften softens softened softer softly
        tight tighten tightens tightened tighter; loose loosen loosens loosened looser; press prest pressed
        forward forwards foward fowards; backward backwards; inward inwards; outward outwards; upward upwards
        sideways sideway; lead led leading; shake shook shaky; feel felt; meet met; begin began; sink sank sunk
        spring sprang sprung; keep kept; tilt; run ran; fly flew flies flying; flip flips flipping flipped; wrist
        reset resets; die dies died dying dead; tie ties; get; hit hits; tip tips tipping tipped tippy tiptoe tiptoes
        unlock unlocks unlocked unlocking; rush rushes; wobble wobbly; droop droopy; flop floppy; stiff stiffen
        stiffens; weak weaken weakens; finish unfinished finishes; extend extension extensions extended extending
        balance unbalanced; steady steadies; rotate rotation; receive reception; recover recovery recovering
        lock lockout lockouts locked locking; turnover turnovers; hip hips; knee knees kneed; toe toes; heel heels
        shin shins; thigh thighs quad quads; elbow elbows; collarbone collarbones clavicle clavicles
        bicep biceps; tricep triceps; kneecap kneecaps; rib ribs ribcage; lat lats; delt delts deltoid deltoids
    """.replace("\n", ";").split(";")
    if (words := line.split())
    for stem in words[:1]
    for word in words
}
