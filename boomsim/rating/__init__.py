"""What may be lifted: limits, rules, capacity, strategies, charts, overload."""
