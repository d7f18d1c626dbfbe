"""Pictures: `draw_x(ax, ...)` makes artists, `update_x(artists, ...)` moves them."""
