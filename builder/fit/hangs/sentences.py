"""What is said of hang plans."""

NOT_DESCRIBED = "The pack does not describe rigging."
NO_LIMITS = "The house has not said what any limit is."
HOUSE_DOWN = "Ask whether what the house itself hangs there can come down."
TAKE_DOWN = "Ask whether the house can take down what hangs there: {names}."

HELD_WITHIN = (
    "Counted with a load cell on every support that somebody reads all the time, and stops the"
    " hoists before one goes {share} beyond its level load. Without that a slack support counts."
)
AT_THE_MOST = "At the most: {carried}. Tightest: {limit}, {spare} to spare beside all hangs so far."
AT_THE_MOST_WITH_HOISTS = (
    "At the most, hoists counted: {carried}. Tightest: {limit}, {spare} to spare beside all hangs"
    " so far."
)
ON_POINT = "{point} {load}"
WITH = " with "
AND = " and "
OFF_SPOT = (
    "{point} is {away} from the spot, within the {near} that this check allows; the truss moves or"
    " the pick leans by that."
)
PULL_IN_LEG = "{pull} in the leg to {point}"
BRIDLE_PULLS = (
    "A bridle that meets at {apex}: at the most {pulls}. The house's rigger decides on it."
)

WITH_THIS_BRIDLE = "With this bridle: {reason}"
WHICH_BRIDLE = (
    "Can you make a bridle for this spot, how high may it meet, and what may hang from it?"
)
BRIDLE_AT = "Can you make a bridle at {spot}, how high may it meet, and what may hang from it?"

LEFT_UNKNOWN = "Nobody has said what is left on {limit}."
LEFT_AT_MOST = (
    "At most {left} left on {limit}: not all that it carries, or may carry, is known. The show's"
    " hangs so far bring {load}."
)
LEFT_AT_LEAST = "At least {left} left on {limit}, and the show's hangs so far bring {load}."
WHAT_IS_LEFT = "What may {limit} carry, and what hangs there already?"
LEFT = "{left} left on {limit}"
NOTHING_LEFT = "Nothing left on {limit}"
TOO_MUCH = "{left}, and the show's hangs so far bring {load}: {over} too much."
AT_LEAST_TOO_MUCH = "{left}, and the show's hangs so far bring at least {load}: {over} too much."
PERHAPS_TOO_MUCH = (
    "{left}. Hung level, the show's hangs so far bring {least}; with a support slack or the"
    " heaviest hoists, up to {most}."
)
BESIDE_UNEVEN = (
    "Of {limit} {level} are left while the house's own hangs hang as planned, and {worst} with"
    " their hoists at their worst. Hung level, the show's hangs so far bring {least}; at their own"
    " worst, {most}."
)
MAY_TAKE_BESIDE = (
    "May {limit} take up to {most} beside the house's own hangs at their worst, or how is that kept"
    " from happening?"
)
BESIDE_WORST = (
    "Counted beside the house's own hangs at their worst (a hoist slack, or out of level by the"
    " house's tolerance): {limits}."
)
ASKED_ABOVE = (
    "{limit} is used to {used} % at the most; above {above} % of a limit the house asks {whom}."
)
WHOEVER_APPROVES = "whoever approves its hang plans"
NOTHING = "nothing"
NOT_KNOWN = "an unknown amount"
MAY_TAKE = (
    "May {limit} take up to {most} while a support is slack, or how is that kept from happening?"
)
POINT_LIMIT = "point {name}"
BEAM_LIMIT = "beam {name}"
ZONE_LIMIT = "the zone {name}"
ROOF_LIMIT = "the whole roof"

POINT_REMEDY = "Move the support to another point, spread it over two, or hang less there."
BEAM_REMEDY = "Move the hang or a part of it to another beam, or hang less there."
ZONE_REMEDY = "Move the hang or a part of it to another part of the roof, or hang less there."
ROOF_REMEDY = "Fly less, or stand it on the floor."

TWO_POINTS = "{one} and {other}"
SPACING_RULE = "how near two loaded points may be to each other on one beam"
HOW_NEAR = "How near may two loaded points be to each other on one beam? ({points})"
NEAR_UNKNOWN = "Nobody has said how near to each other {points} may both be loaded."
TOO_NEAR = "{points} are {apart} apart on one beam; the house keeps {rule} between loaded points."
PERHAPS_TOO_NEAR = (
    "{points} are {apart} apart on one beam; the house keeps {rule} between loaded points, and it"
    " is not known whether both are."
)
TAKE_FARTHER = "Take a point that is farther from a loaded one."

NEITHER_POINT_NOR_SPOT = "A support says neither a point nor a spot."
WHICH_POINTS = "Which points can this hang have?"
NO_SUCH_POINT = "The house names no point {point}."
WHICH_IS_MEANT = "Which of your points is meant by {point}?"
OUT_OF_SERVICE = "{point} is out of service."
OUT_OF_SERVICE_WHY = "{point} is out of service: {note}"
WHEN_BACK = "Take another point, or ask when this one is back in service."
NOT_FOR_VISITORS = "{point} is not for visitors."
TAKE_ANOTHER = "Take another point."
BEAM_OUT_OF_SERVICE = "Beam {beam}, which {point} is on, is out of service."
BEAM_NOT_FOR_VISITORS = "Beam {beam}, which {point} is on, is not for visitors."
TAKE_OTHER_BEAM = "Take a point on another beam."
RATING_UNKNOWN = "Nobody has said what {point} may carry."
WHAT_MAY_IT_CARRY = "What may {point} carry?"

TAKEN = "The nearest point, {point}, is taken by another support of this show."
WHICH_OTHER = "Which other point can this spot have?"
BRIDLE_WANTED = "{reason} A bridle would be wanted, and the house allows them {rule}."
BRIDLE_WANTED_UNKNOWN = (
    "{reason} A bridle would be wanted, and the house has not said whether it allows them."
)
BRIDLE_WANTED_NONE = "{reason} A bridle would be wanted, and the house allows none."
ON_BEAM = "{beam} at {place}"
UNPLACED = (
    "The house has not said where along beam {beam} its points are; what holds all along it is"
    " judged."
)
WHERE_ALONG = "May a show hang from {place}?"
TOO_MANY_OF_GROUP = "{group} has {count} points, and the show's hangs so far ask for {wanted}."
PERHAPS_TOO_MANY = (
    "How many points {group} has is not known to the end, and the show's hangs so far ask for"
    " {wanted}."
)
HOW_MANY_OF_GROUP = "How many points has {group}?"
GROUPS_UNPLACED = "The house has not said where each of these points is: {groups}."
GROUP_TOLD = "{group} ({words})"
GROUP_EACH = "each may carry {limit}"
NO_LIMIT_TOLD = "what each may carry is not told"
WHICH_OF_GROUP = "Which of these points are at {spot}: {groups}?"
NAMED_GROUP = (
    "{group} is a name for several points, and where each of them is the house has not said"
    " ({words})."
)
WHICH_OF_NAMED = "Which of the points {group} can this hang have?"
TOO_FAR_FROM_BEAM = (
    "No beam is within {near} of the spot at {spot}; the nearest, {beam}, is {away} away."
)
PLACES_UNKNOWN = "The house has not said where its points are."
PLACE_UNKNOWN = "No point is told there, and the house does not know where these are: {names}."
RULE_UNKNOWN = "The house does not know one of its own rules for what hangs."
ASK_ROOF_ZONES = "Which parts of your roof have limits of their own, and which?"
ASK_EXCEPTIONS = "Which beams and points have other limits than the rest, and which?"
ASK_FACTOR = "Which factor do you ask for starting and stopping?"
PLACE_OPEN = "The house does not know where on the plan {names} is."
WHERE_IS = "Where on the plan is {names}?"
WHERE_ARE_POINTS = "Where are your points?"
TOO_FAR = "No point is within {near} of the spot at {spot}; the nearest, {point}, is {away} away."
MOVE_SPOT = "Move the spot to a point."
SPOT = "{across}, {depth}"
CENTRE = "centre"
STAGE_LEFT = "{length} SL"
STAGE_RIGHT = "{length} SR"
UPSTAGE = "{length} US"
DOWNSTAGE = "{length} DS"
BETWEEN_BEAMS = "between beams {beams} only"
ON_ANY_BEAM = "on any beam"

WEIGHT_NOT_SAID = "The rider does not say what it weighs."
HOW_HEAVY = "What does it weigh, with all that hangs on it, and what comes on each support?"
BESIDE_OPEN = "{hangs}: the rider does not say what that weighs, so what is left beside it is open."
CANNOT_BE_TOLD = "What each support carries cannot be told: {why}."
CAN_IT_BE_CARRIED = "Can this hang be carried by these points, and what comes on each?"
TIPS = "its weight does not hang between its supports, so it would tip or lift off one of them"
UNRESOLVED = "one of its supports would lift, and what the others then carry was not found"
FACTOR_COUNTED = (
    "All loads are counted times {factor}, the house's own factor for starting and stopping."
)
HOISTS_UNKNOWN = (
    "The rider hangs it from the house's hoists, and the house has not said what they weigh."
)
WHAT_HOISTS_WEIGH = "What do your hoists weigh with their chain?"
HOISTS_COUNTED = "The house's hoists are counted with their chain, {weight} on each support."
FROM_TO = "{least} to {most}"
HOISTS_NOT_COUNTED = (
    "Hoists are not counted: the rider does not say who brings them, or what they weigh."
)
HEAVIEST_COUNTED = (
    "The rider does not say who brings hoists. At the most, the house's heaviest is counted:"
    " {weight} on each support."
)

FREE_UNKNOWN = "The house has not said how many of its hoists are left."
RATINGS_UNKNOWN = "The house has not said what all of its hoists are rated for."
WHICH_HOISTS = "How many of your hoists are free, of what rating?"
TOO_FEW = "The house has {free} hoists left, and the show's hangs so far ask for {wanted}."
BRING_HOISTS = "Bring hoists, or hire them."
TOO_WEAK = "The house's strongest hoist is rated {rating}, and up to {load} come on one support."
STRONGER = "Spread the load over more supports, or bring stronger hoists."
MAY_A_HOIST = "May a hoist take that while another is slack, or how is that kept from happening?"

STEEL_UNKNOWN = "The low steel over all of its points is not known."
NO_POINTS = "The hang has no points yet."
STEEL_AT = "the steel at {point}"
BRIDLE_TO = "the bridle to {point}"
TOO_HIGH = "Too high under {what} by {amount}."
BELOW_UNKNOWN = (
    "{amount} between {what} and the trim. The rider does not say what hoists, slings and truss"
    " take of that."
)
TO_SPARE_UNDER = "{amount} to spare under {what}."
LOW_STEEL = "Low steel"
