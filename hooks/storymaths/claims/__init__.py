"""What words on a page claim of numbers, shapes, units and times, and which of it does not hold.

One module a class of claim. Each is precise before it is greedy: what it cannot read whole it leaves alone.
"""
