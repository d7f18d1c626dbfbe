"""What may be lifted.

On this floor lies the call path: setup, rules, response, capacity, raising, with the table of
``limits`` beside it, and the strategies by which a boom goes out. What is asked of it has a room
each: ``lift``, ``comparison``, ``charts``, ``around``, ``overload``, ``losses``.
"""
