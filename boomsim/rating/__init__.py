"""What may be lifted.

On this floor lies the call path: setup, rules, limits, response, capacity; and the strategies by
which a boom goes out. What is asked of it has a room each: ``comparison``, ``charts``, ``around``,
``overload``, ``losses``.
"""
