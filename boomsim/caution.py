"""The one wording of the caution that goes with every capacity."""

CAUTION = (
    "A teaching model with invented machines, not for planning a lift: for real work the maker's "
    "rated load chart, local regulations and a competent, licensed person decide."
)
