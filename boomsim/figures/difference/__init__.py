"""Why one way to a boom length carries more than another."""
