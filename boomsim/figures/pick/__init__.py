"""The picture of a pick: every check as a bar, and the crane from above."""
