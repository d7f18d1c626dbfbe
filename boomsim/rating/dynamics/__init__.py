"""A load jerked, stopped or swung, as the load that, hanging still, uses the crane as much."""
