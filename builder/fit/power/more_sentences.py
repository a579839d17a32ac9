"""What is said of where a feed is and of what is between it and the house."""

NOT_THERE = "it is at {place}, not {at}"
WHERE_UNKNOWN = "whether it is {at} is not stated"
NO_TRANSFORMER = "no transformer of its own isolates it"
TRANSFORMER_UNKNOWN = "whether a transformer of its own isolates it is not stated"
DIMMERS_SHARE = "it shares the transformer of {node} with {other}, which has dimmers on it"
SOURCE_UNKNOWN = "which transformer is behind it is not stated"
TOO_FEW_WIRES = "{count} wires alone"
WIRES_UNKNOWN = "how many wires it has is not stated"
NO_DEVICE = "it has no residual current device"
TRIPS_HIGHER = "its residual current device trips at {amount}"
TRIPS_UNKNOWN = "what its residual current device trips at is not stated"
BREAKER_UNKNOWN = "its breaker is not stated"
ALSO_FEEDS = "its breaker feeds {others} too"
IS_SHARED = "it is shared with {others}"
SHARED_UNKNOWN = "whether anything else hangs on its breaker is not stated"
OTHERS_ON_IT = (
    "It has a place on {service}, but {others} stands there too, and it asks for a breaker of its"
    " own."
)
OUTLETS_INSTEAD = (
    "No service does. At {place} there are sockets of three phases with a breaker each:"
    " {connector}, {amount}. Ask whether one of them serves as this feed."
)
