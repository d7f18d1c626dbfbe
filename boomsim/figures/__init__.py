"""Pictures: `draw_x(ax, ...)` makes artists, `update_x(artists, ...)` moves them.

On this floor lies what all of them share: page, panels, lettering, scales, curves, styles, words.
Each picture has a room of its own; there `figure.py` puts its parts together on a page.
"""
