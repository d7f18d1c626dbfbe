"""The live page: the explorer in one HTML file, with the whole model in the reader's browser.

Nothing is drawn and nothing is computed here. :mod:`boomsim.lab.live.live_model` runs in the
browser and calls the explorer's own moves, answers and views; the rest packs it into a file.
"""
