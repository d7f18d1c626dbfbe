"""boomsim: a physics teaching simulator of a telescoping boom.

It shows why a boom of one length lifts differently depending on which sections are out.
A teaching model with invented machines: see :data:`boomsim.caution.CAUTION`.
"""

__version__ = "0.1.0"
