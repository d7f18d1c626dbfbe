"""The edge of the program: text with units in, SI numbers inside, text with units out.

pint is the authority on units. Three of its habits are dangerous here, so our own number pattern
comes first: it reads "9,8 m" as 98 m, takes "ton" for 907 kg, and lets a bare "5" pass. It is
loaded only for a unit that is not among the common ones, for it takes half a second.
"""

from boomsim.units._did_you_mean import UnitError as UnitError
from boomsim.units._did_you_mean import did_you_mean as did_you_mean
from boomsim.units._did_you_mean import listed as listed
from boomsim.units._did_you_mean import quoted as quoted
from boomsim.units._quantities import QUANTITIES as QUANTITIES
from boomsim.units._quantities import SYSTEMS as SYSTEMS
from boomsim.units._quantities import Display as Display
from boomsim.units._quantities import Quantity as Quantity
from boomsim.units._quantities import display as display
from boomsim.units._quantities import outside as outside
from boomsim.units._quantities import quantity_named as quantity_named
from boomsim.units._quantities import rounded as rounded
from boomsim.units._quantities import rounded_down as rounded_down
from boomsim.units._quantities import show as show
from boomsim.units._quantities import show_rated as show_rated
from boomsim.units._reading import parse as parse
from boomsim.units._reading import registry as registry
from boomsim.units._reading import tidy_unit as tidy_unit
from boomsim.units._trade_words import TRADE as TRADE
from boomsim.units._trade_words import all_in_words as all_in_words
from boomsim.units._trade_words import in_words as in_words
from boomsim.units._trade_words import is_named as is_named
from boomsim.units._trade_words import markup_in_words as markup_in_words
from boomsim.units._unit_factors import FOOT as FOOT
from boomsim.units._unit_factors import INCH as INCH
from boomsim.units._unit_factors import POUND as POUND
