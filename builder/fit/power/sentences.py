"""What is said of power."""

from builder.fit.records import Advice, Mender

POWER: Advice = {
    "question": (
        "Which service can we have, of what current on each phase, on which connector, and how far"
        " is it from where we need it?"
    ),
    "remedy": "Hire a generator, or share with another department and draw less.",
    "who": "the house electrician, or hire",
}
CIRCUITS: Advice = {
    "question": (
        "How many single-phase circuits of that current can we have, where, on which connector and"
        " on which phases?"
    ),
    "remedy": (
        "Bring a distribution board for a three-phase service, draw less, or hire a generator."
    ),
    "who": "the house electrician, or hire",
}
OTHER_SYSTEM: Mender = {
    "remedy": (
        "Hire a transformer, where the frequency suits, or a generator of the system asked for."
        " Never connect to another voltage."
    ),
    "who": "the house electrician, or hire",
}

NO_POWER = "The pack does not describe power."
NOTHING_ASKED = "No circuit is asked for."
ADAPTER = "Connector: {asked} asked, the house has {there}. Whoever connects decides on an adapter."
VOLTAGE = "The rider states no voltage; this is {system}."
ONE_CLASS = (
    "{asked} is asked, the house has {system}. One supply serves both (IEC 60038); see what your"
    " equipment takes."
)
SHARES = "It shares {shared} with {service}, which has dimmers on it."
ASK_OF_DIMMERS = "Ask whether dimmers share its transformer."

NO_PLACE = "The house names no place {place}. Its places with outlets: {names}."
NO_OUTLETS = "The house has not said which outlets it has."
NEAREST = "The nearest place with such outlets is {place}, {distance} away in a straight line."
ELSEWHERE = "Such outlets are at {names}."
RATED = "The largest outlets there are of {amount}."
NO_CURRENT = "The rider states no current; these are of {amount}."
FOR_HOURS = "For hours on end one of {place} may carry {amount}."
FEEDER_OUT = "{feeder} is out of service, and so are the outlets that it feeds."
MAYBE_MORE = "{most} were found to fit at the same time, and more is not ruled out."
OUTLETS_UNKNOWN = (
    "The house has not said of some outlets how many they are, their rating or phases, or what is"
    " free behind them."
)
OUTLETS_OF_CLOSED = "{why}, and whether a show may use them all the same is not said."
OUTLETS_TOO_FEW = "{there} such outlets of {wanted}."
OUTLETS_TOO_FULL = (
    "{there} such outlets, and {most} can be loaded so at the same time beside what the house"
    " draws."
)
OF_VOLTS = "{voltage} V"
OTHER_VOLTAGE = "The outlets there are of {voltage} V."

SERVICE = "{service}: {reasons}."
SERVICE_KNOWN = "{service}: {known} stated; {reasons}."
WIRES = "{count} wires"
RATED_LESS = "rated {amount}"
FEW_PHASES = "{phases} alone"
TOGETHER = "In all {wanted} on each phase are asked; {count} services are rated {stated} together."
FREE_UNKNOWN = "what is free is not known"
TOO_LITTLE = "{amount} too little on the fullest phase"
KEPT_FOR = "The house keeps it for {use}."
FED_BY_DEAD = "{feeder}, which feeds it, is out of service"
DIMMERS = "dimmers hang on it"
DIMMERS_UNKNOWN = "nobody knows whether dimmers hang on it"
SYSTEM_UNKNOWN = "its system is not stated"
SYSTEM_OPEN = "{system}: between lines or to neutral is not stated"
SYSTEM_OTHER = "other system, {system}"
CONNECTOR_NONE = "no connector for visitors"
CONNECTOR_UNKNOWN = "its connectors are not stated"
PLACE_UNNAMED = "the house names no place {place}, but {names}"
SPOT_UNKNOWN = "where {place} is, is not stated"
PLACE_ALONE = "the house names no place {place}"
PLACE_UNKNOWN = "where it is, is not stated"
DISTANCE_UNKNOWN = "How far it is from {place} is not stated."
TOO_FAR = "{distance} from {place} in a straight line"
DISTANCE = "{distance} from {place} in a straight line; the cable path is longer."

ON_SERVICE = "On {service}; {amount} are left there beside all loads that have a place."
ON_OUTLETS = (
    "{outlets}; {amount} are left on the fullest of these phases beside all loads that have a"
    " place."
)
AT_OUTLETS = "At {place}, {outlets}: {circuits}"
ON_PHASES = "{count} on {phases}"
MAY_HOLD = (
    "{node} has at least {least} and at most {most} free before the show's loads, for the house has"
    " not measured all that it draws."
)
NOT_FOUND = "No place was found beside the other loads within the bound of the search."
ALONE_AT_OUTLETS = (
    "Alone it would fit at the house's outlets, but beside the other loads, as they are placed"
    " here, {most} of {wanted} do."
)
ALONE_ON_SERVICE = "Alone it would fit on {service}, but not at the same time as the other loads."
