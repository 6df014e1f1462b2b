# SPDX-License-Identifier: MIT
"""tap: checks in a script, told in TAP, one line each."""
import sys


class Tap:
    def __init__(self):
        self.count = self.failed = 0

    def ok(self, good, what, why=''):
        self.count += 1
        self.failed += not good
        print(f'{"ok" if good else "not ok"} {self.count} - {what}')
        if not good and why:
            for line in str(why).splitlines()[:20]:
                print(f'# {line}')
        sys.stdout.flush()
        return good

    def same(self, got, wanted, what):
        return self.ok(got == wanted, what, f'got    {got!r}\nwanted {wanted!r}')

    def parts(self, *parts):
        """One that falls over must not hide the others."""
        for part in parts:
            try:
                part()
            except Exception as trouble:
                self.ok(False, f'{part.__name__} ran to its end', repr(trouble))

    def end(self):
        print(f'1..{self.count}')
        return 1 if self.failed or not self.count else 0
