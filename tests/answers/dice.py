"""A seeded draw, and what a question to the command is."""
import random
from typing import NamedTuple


class Question(NamedTuple):
    name: str  # the part and a number, which stays the same from dump to dump
    part: str
    words: list


class Dice(random.Random):
    """Every question has dice of its own, so that one more or less changes no other."""

    def maybe(self, chance):
        return self.random() < chance

    def several(self, pool, least, most):
        return self.sample(pool, min(len(pool), self.randint(least, most)))


def drawn(part, count, draw):
    """`count` questions of a part; `draw(dice, i)` gives the words of each."""
    names = (f"{part}-{i:04}" for i in range(count))
    return [Question(name, part, draw(Dice(name), i)) for i, name in enumerate(names)]


def listed(part, command_lines):
    return [Question(f"{part}-{i:04}", part, list(words)) for i, words in enumerate(command_lines)]
