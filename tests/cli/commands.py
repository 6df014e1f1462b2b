# SPDX-License-Identifier: MIT
"""The commands that there are, as the tests of the program and of its pages know them."""
COMMANDS = ('new', 'check', 'draw', 'animate', 'handout', 'coach', 'fill-in', 'tidy', 'explain', 'list', 'positions', 'practice', 'chart', 'trend', 'card', 'book', 'season', 'open')
