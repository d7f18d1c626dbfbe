"""The version of the package, for every room: a file of its own, so that none asks the roof."""

__version__ = "0.1.0"
