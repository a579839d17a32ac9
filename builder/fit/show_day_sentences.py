"""What is said of several acts on one day."""

TOGETHER = "at least {amount} together ({parts})"
IN_FRONT = "Deck depth for {act} in front of what stays"
STAYS_UNKNOWN = "Nobody has said how deep what stays on deck is: {acts}."
HOW_DEEP = "How deep is what stays on deck while others play? ({acts})"
DEPTH_LEFT = "{depth} less {kept} that stays and {aisle} aisle: {amount} to spare."
DEPTH_SHORT = "{depth} less {kept} that stays and {aisle} aisle: short by {amount}."
