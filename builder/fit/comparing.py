"""The names that other modules still find here; each stands in the room of its subject."""

from builder.fit.margins import LENGTH_TOLERANCE_M as LENGTH_TOLERANCE_M
from builder.fit.margins import SHARE_TOLERANCE as SHARE_TOLERANCE
from builder.fit.margins import signed as signed
from builder.fit.needs.comparing import compared as compared
from builder.fit.notes import age_notes as age_notes
from builder.fit.notes import item_notes as item_notes
from builder.fit.notes import once as once
from builder.fit.sections import in_configuration as in_configuration
from builder.fit.sections import section_of as section_of
from builder.fit.sections import which_configuration as which_configuration
from builder.fit.verdicts import asked as asked
